namespace Undercowl.Physics;

/// <summary>
/// Pressure conversions by the exact definitions of the pound (0.45359237 kg), the inch (25.4 mm), standard gravity
/// (9.80665 m/s2), the bar (100 kPa) and the torr (101.325/760 kPa); NIST SP 811, appendix B.
/// </summary>
/// <remarks>
/// Conversions keep the kind of pressure: gauge stays gauge and absolute stays absolute. Any number is converted;
/// NaN and infinity pass through.
/// </remarks>
public static class Pressure
{
    /// <summary>kPa per lbf/in2: 0.45359237 x 9.80665 / 0.0254^2 / 1000 = 6.894757293...</summary>
    public const double KilopascalsPerPsi = 0.45359237 * 9.80665 / (0.0254 * 0.0254) / 1000;

    /// <summary>kPa per bar, exact.</summary>
    public const double KilopascalsPerBar = 100;

    /// <summary>kPa per kgf/cm2 (technical atmosphere), exact.</summary>
    public const double KilopascalsPerKilogramForcePerSquareCentimetre = 98.0665;

    /// <summary>kPa per Torr, exact: a 760th of the standard atmosphere. A conventional mmHg is the same within 0.2 millionths.</summary>
    public const double KilopascalsPerTorr = 101.325 / 760;

    /// <summary>Standard atmosphere in kPa, exact (ISO 2533, sea level).</summary>
    public const double StandardAtmosphereKilopascals = 101.325;

    public static double KilopascalsFromPsi(double psi) => psi * KilopascalsPerPsi;

    public static double PsiFromKilopascals(double kilopascals) => kilopascals / KilopascalsPerPsi;

    public static double KilopascalsFromBar(double bar) => bar * KilopascalsPerBar;

    public static double BarFromKilopascals(double kilopascals) => kilopascals / KilopascalsPerBar;

    public static double KilopascalsFromKilogramsForcePerSquareCentimetre(double kilogramsForcePerSquareCentimetre) =>
        kilogramsForcePerSquareCentimetre * KilopascalsPerKilogramForcePerSquareCentimetre;

    public static double KilogramsForcePerSquareCentimetreFromKilopascals(double kilopascals) =>
        kilopascals / KilopascalsPerKilogramForcePerSquareCentimetre;

    public static double KilopascalsFromTorr(double torr) => torr * KilopascalsPerTorr;

    public static double TorrFromKilopascals(double kilopascals) => kilopascals / KilopascalsPerTorr;
}
