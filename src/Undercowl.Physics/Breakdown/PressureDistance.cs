namespace Undercowl.Physics;

/// <summary>
/// Gas pressure times electrode distance, the variable of Paschen's law. A type of its own because Torr cm and kPa cm
/// differ by a factor of 7.5 and are often confused. Never negative; the default is zero, where nothing breaks down.
/// </summary>
public readonly record struct PressureDistance
{
    private PressureDistance(double torrCentimetres) => TorrCentimetres = torrCentimetres;

    public double TorrCentimetres { get; }

    public double KilopascalCentimetres => Pressure.KilopascalsFromTorr(TorrCentimetres);

    public static PressureDistance FromTorrCentimetres(double torrCentimetres)
    {
        ThrowIfNegative(torrCentimetres, "Torr cm");
        return new PressureDistance(torrCentimetres);
    }

    public static PressureDistance FromKilopascalCentimetres(double kilopascalCentimetres)
    {
        ThrowIfNegative(kilopascalCentimetres, "kPa cm");
        return new PressureDistance(Pressure.TorrFromKilopascals(kilopascalCentimetres));
    }

    /// <summary>Absolute pressure in kPa at about 20 degC, and a gap in mm.</summary>
    public static PressureDistance From(double pressureKilopascals, double gapMillimetres)
    {
        ThrowIfNegative(pressureKilopascals, "kPa");
        ThrowIfNegative(gapMillimetres, "mm");
        return FromKilopascalCentimetres(pressureKilopascals * gapMillimetres / 10);
    }

    private static void ThrowIfNegative(double value, string unit) =>
        PhysicsRangeException.ThrowIfOutside(
            value, 0, 1e9, "pressure times distance", unit, "Give an absolute pressure and a distance, neither negative.");
}
