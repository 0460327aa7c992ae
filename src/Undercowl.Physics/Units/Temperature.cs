namespace Undercowl.Physics;

/// <summary>
/// Temperature conversions (points on the scale, not differences), exact: K = degC + 273.15, degC = (degF - 32) x 5/9
/// (NIST SP 811, appendix B). Any number is converted; NaN and infinity pass through.
/// </summary>
public static class Temperature
{
    /// <summary>Zero degC in kelvin, exact.</summary>
    public const double ZeroCelsiusKelvin = 273.15;

    public static double CelsiusFromFahrenheit(double fahrenheit) => (fahrenheit - 32) * 5 / 9;

    public static double FahrenheitFromCelsius(double celsius) => (celsius * 9 / 5) + 32;

    public static double KelvinFromCelsius(double celsius) => celsius + ZeroCelsiusKelvin;

    public static double CelsiusFromKelvin(double kelvin) => kelvin - ZeroCelsiusKelvin;
}
