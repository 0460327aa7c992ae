namespace Undercowl.Physics;

/// <summary>
/// Breakdown of air between wide flat faces: V = 24.36 pd + 6.72 sqrt(pd), V in peak kV, p in bar reduced to 20 degC, d in
/// cm. Not <see cref="UniformFieldGap"/>, whose constants go with a relative density and give 3 to 7 % less.
/// </summary>
/// <remarks>
/// p d from 0.1 to 200 bar mm. Kuffel, Zaengl and Kuffel, High Voltage Engineering Fundamentals, 2nd ed. 2000, ch. 5,
/// as quoted in public code. Within 7 % of the ELECTRA No. 32 mean curve (Dakin et al.) from 0.1 to 20 bar mm.
/// </remarks>
public static class UniformFieldGapByBar
{
    /// <summary>kV per bar cm.</summary>
    public const double KilovoltsPerBarCentimetre = 24.36;

    /// <summary>kV per root bar cm.</summary>
    public const double KilovoltsPerRootBarCentimetre = 6.72;

    private const double MinimumBarMillimetres = 0.1;
    private const double MaximumBarMillimetres = 200;

    /// <summary>
    /// Peak kV that breaks the gap down. Pressure absolute, 0.1 to 40 bar, already reduced to 20 degC: p x 293/(273 + t).
    /// </summary>
    public static double BreakdownPeakKilovolts(double gapMillimetres, double pressureBarReducedTo20Celsius)
    {
        ThrowIfNotBar(pressureBarReducedTo20Celsius);
        PhysicsRangeException.ThrowIfOutside(
            gapMillimetres,
            MinimumBarMillimetres / pressureBarReducedTo20Celsius,
            MaximumBarMillimetres / pressureBarReducedTo20Celsius,
            "gap between flat faces", "mm", "Give millimetres: 40 thou is 1.016 mm, 0.025 in is 0.635 mm.");
        return Kilovolts(pressureBarReducedTo20Celsius * gapMillimetres / 10);
    }

    /// <summary>Gap that the given peak kV just breaks down; the inverse of <see cref="BreakdownPeakKilovolts"/>.</summary>
    public static double GapMillimetres(double peakKilovolts, double pressureBarReducedTo20Celsius)
    {
        ThrowIfNotBar(pressureBarReducedTo20Celsius);
        PhysicsRangeException.ThrowIfOutside(
            peakKilovolts, Kilovolts(MinimumBarMillimetres / 10), Kilovolts(MaximumBarMillimetres / 10),
            "voltage across flat faces", "kV peak", "Give peak kilovolts, not volts.");
        return 10
            * UniformFieldGap.CentimetresFor(peakKilovolts, KilovoltsPerBarCentimetre, KilovoltsPerRootBarCentimetre)
            / pressureBarReducedTo20Celsius;
    }

    private static void ThrowIfNotBar(double bar) =>
        PhysicsRangeException.ThrowIfOutside(
            bar, 0.1, 40, "gas pressure", "bar", "Give absolute bar: 101.325 kPa or 760 mmHg is 1.013 bar.");

    private static double Kilovolts(double barCentimetres) =>
        (KilovoltsPerBarCentimetre * barCentimetres) + (KilovoltsPerRootBarCentimetre * Math.Sqrt(barCentimetres));
}
