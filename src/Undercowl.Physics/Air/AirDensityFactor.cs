namespace Undercowl.Physics;

/// <summary>
/// Density of the air as a fraction of the density at which a breakdown table was made. Two references are in use and
/// differ by 1.7 %, so there are two functions and each gap formula's parameter says which it wants.
/// </summary>
/// <remarks>
/// Pressure is the absolute pressure at the place (not the weather map's, which is reduced to sea level). The ranges
/// are those of air outdoors; they are narrow so that psi, bar, mmHg, degF and kelvin are refused.
/// </remarks>
public static class AirDensityFactor
{
    /// <summary>
    /// Peek's constant, K per cmHg, in 3.92 b/(273 + t), b in cmHg; 0.9997 at 76 cmHg and 25 degC. F. W. Peek, Dielectric
    /// Phenomena in High Voltage Engineering.
    /// </summary>
    public const double PeekKelvinPerCentimetreMercury = 3.92;

    /// <summary>
    /// What turns a factor relative to 20 degC into one relative to 25 degC for the same air: 3.92 x 76 / 293 = 1.0168.
    /// </summary>
    public const double To25CelsiusFrom20Celsius = PeekKelvinPerCentimetreMercury * 76 / 293;

    /// <summary>Lowest factor the gap formulas take: half density is the lowest published check.</summary>
    public const double Minimum = 0.5;

    /// <summary>Highest factor the gap formulas take: -50 degC at 110 kPa gives 1.45 by the 25 degC reference.</summary>
    public const double Maximum = 1.5;

    /// <summary>
    /// Relative to 25 degC and 760 mmHg: for the needle gap and Peek's sphere gap. Pressure 60 to 110 kPa absolute,
    /// temperature -50 to 60 degC.
    /// </summary>
    public static double RelativeTo25Celsius(double pressureKilopascals, double temperatureCelsius)
    {
        ThrowIfNotOutdoors(pressureKilopascals, temperatureCelsius);
        double centimetresMercury = Pressure.TorrFromKilopascals(pressureKilopascals) / 10;
        return PeekKelvinPerCentimetreMercury * centimetresMercury / (273 + temperatureCelsius);
    }

    /// <summary>
    /// Relative to 20 degC and 101.325 kPa, (p/760)(293/(273 + t)) as in IEC 60052 and IEEE Std 4: for the uniform
    /// field and the tester gap. Ranges as for <see cref="RelativeTo25Celsius"/>.
    /// </summary>
    public static double RelativeTo20Celsius(double pressureKilopascals, double temperatureCelsius)
    {
        ThrowIfNotOutdoors(pressureKilopascals, temperatureCelsius);
        return pressureKilopascals / Pressure.StandardAtmosphereKilopascals * 293 / (273 + temperatureCelsius);
    }

    internal static void ThrowIfOutside(double airDensityFactor) =>
        PhysicsRangeException.ThrowIfOutside(
            airDensityFactor, Minimum, Maximum, "air density factor", string.Empty,
            "Give the factor (1 in ordinary air), not a pressure; work it out from pressure and temperature first.");

    private static void ThrowIfNotOutdoors(double pressureKilopascals, double temperatureCelsius)
    {
        PhysicsRangeException.ThrowIfOutside(
            pressureKilopascals, 60, 110, "air pressure", "kPa",
            "Give the absolute pressure at the place in kPa: 1 bar is 100, 760 mmHg is 101.325, 14.7 psi is 101.4.");
        PhysicsRangeException.ThrowIfOutside(
            temperatureCelsius, -50, 60, "air temperature", "degC", "Give degrees Celsius: 77 degF is 25 degC.");
    }
}
