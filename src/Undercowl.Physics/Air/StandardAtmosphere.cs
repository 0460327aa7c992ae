namespace Undercowl.Physics;

/// <summary>
/// ISO 2533 / US Standard Atmosphere 1976, lowest layer: an average day, not today's weather. Use a barometer where
/// there is one.
/// </summary>
/// <remarks>
/// Heights are geopotential metres, -500 to 11000; below 3000 m the geometric height is the same within 0.05 %. NaN is
/// refused. Feet cannot be told from metres by size: convert with <see cref="Length.MetresFromFeet"/>.
/// </remarks>
public static class StandardAtmosphere
{
    /// <summary>K at sea level, exact in the standard.</summary>
    public const double SeaLevelKelvin = 288.15;

    /// <summary>K per geopotential metre, exact in the standard.</summary>
    public const double LapseKelvinPerMetre = 0.0065;

    /// <summary>g0 M / (R L) = 9.80665 x 28.9644 / (8314.32 x 0.0065), the standard's own gas constant.</summary>
    public const double PressureExponent = 9.80665 * 28.9644 / (8314.32 * LapseKelvinPerMetre);

    /// <summary>kg/m3 at sea level: p0 M / (R T0).</summary>
    public const double SeaLevelKilogramsPerCubicMetre = 101325 * 28.9644 / (8314.32 * SeaLevelKelvin);

    /// <summary>m, the nominal Earth radius of the standard, for geometric heights.</summary>
    private const double EarthRadiusMetres = 6356766;

    public static double TemperatureKelvin(double geopotentialMetres)
    {
        PhysicsRangeException.ThrowIfOutside(
            geopotentialMetres, -500, 11000, "height above sea level", "m",
            "Give the height in metres; this is the lowest layer of the standard atmosphere only.");
        return SeaLevelKelvin - (LapseKelvinPerMetre * geopotentialMetres);
    }

    /// <summary>Absolute pressure, kPa.</summary>
    public static double PressureKilopascals(double geopotentialMetres) =>
        Pressure.StandardAtmosphereKilopascals
        * Math.Pow(TemperatureKelvin(geopotentialMetres) / SeaLevelKelvin, PressureExponent);

    /// <summary>Density, kg/m3. It falls more slowly with height than pressure does, because the air is colder.</summary>
    public static double KilogramsPerCubicMetre(double geopotentialMetres) =>
        SeaLevelKilogramsPerCubicMetre
        * Math.Pow(TemperatureKelvin(geopotentialMetres) / SeaLevelKelvin, PressureExponent - 1);

    /// <summary>Geopotential height of a height measured with a tape (or read off a map); -500 to 11019 m.</summary>
    public static double GeopotentialMetres(double geometricMetres)
    {
        PhysicsRangeException.ThrowIfOutside(
            geometricMetres, -500, 11019, "height above sea level", "m", "Give the height in metres.");
        return EarthRadiusMetres * geometricMetres / (EarthRadiusMetres + geometricMetres);
    }
}
