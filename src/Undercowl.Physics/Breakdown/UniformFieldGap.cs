namespace Undercowl.Physics;

/// <summary>
/// Breakdown of air between wide flat faces: V = 24.22 x + 6.08 sqrt(x), V in peak kV, x = relative air density times
/// gap in cm, density 1 at 20 degC and 101.3 kPa. Not <see cref="UniformFieldGapByBar"/>, whose constants look alike
/// but go with bar. Not for points, and not for gaps much wider than the faces.
/// </summary>
/// <remarks>
/// Density times gap from 0.1 to 200 mm, where published examples stop. Against the ELECTRA No. 32 mean curve (Dakin
/// et al.) it is 4 to 7 % low from 0.5 mm up and 14 % low at 0.1 mm. Right of the Paschen minimum only.
/// </remarks>
public static class UniformFieldGap
{
    /// <summary>kV per cm of gap at density 1. Textbook form (Bruce/Schumann), quoted alike by three public sources.</summary>
    public const double KilovoltsPerCentimetre = 24.22;

    /// <summary>kV per root cm of gap at density 1; same sources.</summary>
    public const double KilovoltsPerRootCentimetre = 6.08;

    private const double MinimumMillimetres = 0.1;
    private const double MaximumMillimetres = 200;

    /// <summary>Peak kV that breaks the gap down.</summary>
    public static double BreakdownPeakKilovolts(double gapMillimetres, double airDensityFactorAt20Celsius = 1)
    {
        AirDensityFactor.ThrowIfOutside(airDensityFactorAt20Celsius);
        PhysicsRangeException.ThrowIfOutside(
            gapMillimetres, MinimumMillimetres / airDensityFactorAt20Celsius, MaximumMillimetres / airDensityFactorAt20Celsius,
            "gap between flat faces", "mm", "Give millimetres: 40 thou is 1.016 mm, 0.025 in is 0.635 mm.");
        return Kilovolts(airDensityFactorAt20Celsius * gapMillimetres / 10);
    }

    /// <summary>Gap that the given peak kV just breaks down; the inverse of <see cref="BreakdownPeakKilovolts"/>.</summary>
    public static double GapMillimetres(double peakKilovolts, double airDensityFactorAt20Celsius = 1)
    {
        AirDensityFactor.ThrowIfOutside(airDensityFactorAt20Celsius);
        PhysicsRangeException.ThrowIfOutside(
            peakKilovolts, Kilovolts(MinimumMillimetres / 10), Kilovolts(MaximumMillimetres / 10),
            "voltage across flat faces", "kV peak", "Give peak kilovolts, not volts.");
        return 10 * CentimetresFor(peakKilovolts, KilovoltsPerCentimetre, KilovoltsPerRootCentimetre)
            / airDensityFactorAt20Celsius;
    }

    /// <summary>
    /// Solves a x + b sqrt(x) = v for x. Written as 2v/(b + root) so that nothing cancels for small v.
    /// </summary>
    internal static double CentimetresFor(double v, double a, double b)
    {
        double rootCentimetres = 2 * v / (b + Math.Sqrt((b * b) + (4 * a * v)));
        return rootCentimetres * rootCentimetres;
    }

    private static double Kilovolts(double densityCentimetres) =>
        (KilovoltsPerCentimetre * densityCentimetres) + (KilovoltsPerRootCentimetre * Math.Sqrt(densityCentimetres));
}
