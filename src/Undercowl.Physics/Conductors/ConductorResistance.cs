namespace Undercowl.Physics;

/// <summary>
/// Resistance of a winding at another temperature: R(T) = R20 (1 + alpha (T - 20)). For windings and wires of pure metal; not
/// for resistor caps, suppression leads or anything with a semiconductor in it.
/// </summary>
/// <remarks>
/// The temperature is the winding's, not the air's: after a run it is far hotter. -60 to 200 degC. Ohms from 0 up; zero stays
/// zero. What the meter's own leads add must be taken off first.
/// </remarks>
public static class ConductorResistance
{
    /// <summary>Per kelvin at 20 degC, annealed copper. IEC 60028, as quoted in public code.</summary>
    public const double CopperPerKelvin = 0.00393;

    /// <summary>Per kelvin at 20 degC, hard-drawn aluminium. IEC 60889, as quoted in public code.</summary>
    public const double AluminiumPerKelvin = 0.00403;

    /// <summary>Ohms at 20 degC of what was measured at another temperature: the value to compare with a specification.</summary>
    public static double OhmsAt20Celsius(ConductorMetal metal, double measuredOhms, double temperatureCelsius)
    {
        ThrowIfNotOhms(measuredOhms);
        return measuredOhms / RatioTo20Celsius(metal, temperatureCelsius);
    }

    /// <summary>Ohms to expect at a temperature, from the value at 20 degC; the inverse of <see cref="OhmsAt20Celsius"/>.</summary>
    public static double OhmsAt(ConductorMetal metal, double ohmsAt20Celsius, double temperatureCelsius)
    {
        ThrowIfNotOhms(ohmsAt20Celsius);
        return ohmsAt20Celsius * RatioTo20Celsius(metal, temperatureCelsius);
    }

    /// <summary>R(T)/R20.</summary>
    public static double RatioTo20Celsius(ConductorMetal metal, double temperatureCelsius)
    {
        PhysicsRangeException.ThrowIfOutside(
            temperatureCelsius, -60, 200, "winding temperature", "degC", "Give degrees Celsius: 77 degF is 25 degC.");
        double perKelvin = metal switch
        {
            ConductorMetal.Copper => CopperPerKelvin,
            ConductorMetal.Aluminium => AluminiumPerKelvin,
            _ => throw new PhysicsRangeException(
                "metal of the winding", metal.ToString(), "copper or aluminium", "State the metal; almost every winding is copper."),
        };
        return 1 + (perKelvin * (temperatureCelsius - 20));
    }

    private static void ThrowIfNotOhms(double ohms) =>
        PhysicsRangeException.ThrowIfOutside(
            ohms, 0, 1e9, "resistance", "ohm", "Give ohms; an open circuit has no temperature correction.");
}
