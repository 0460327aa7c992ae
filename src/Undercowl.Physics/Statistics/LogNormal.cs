namespace Undercowl.Physics;

/// <summary>
/// A positive quantity whose natural logarithm is normal: given by its median (in the quantity's own unit) and the standard
/// deviation of the logarithm, so 0.2 is about 20 %. Median, not mean: the mean is larger by exp(s^2/2).
/// </summary>
/// <remarks>Median above 0 and finite; deviation from 1e-6 to 10. A value of 0 or less has probability and density 0.</remarks>
public static class LogNormal
{
    /// <summary>Probability of a value below <paramref name="value"/>.</summary>
    public static double Cumulative(double value, double median, double logStandardDeviation)
    {
        ThrowIfNotShape(median, logStandardDeviation);
        return value <= 0 ? 0 : StandardNormal.Cumulative(Math.Log(value / median) / logStandardDeviation);
    }

    /// <summary>Probability density at <paramref name="value"/>, per unit of it.</summary>
    public static double Density(double value, double median, double logStandardDeviation) =>
        Math.Exp(LogDensity(value, median, logStandardDeviation));

    /// <summary>Natural logarithm of the density; minus infinity at 0 and below.</summary>
    public static double LogDensity(double value, double median, double logStandardDeviation)
    {
        ThrowIfNotShape(median, logStandardDeviation);
        return value <= 0
            ? double.NegativeInfinity
            : StandardNormal.LogDensity(Math.Log(value / median) / logStandardDeviation)
                - Math.Log(logStandardDeviation) - Math.Log(value);
    }

    private static void ThrowIfNotShape(double median, double logStandardDeviation)
    {
        PhysicsRangeException.ThrowIfOutside(
            median, double.Epsilon, double.MaxValue, "median", string.Empty, "Give a positive, finite median.");
        PhysicsRangeException.ThrowIfOutside(
            logStandardDeviation, 1e-6, 10, "standard deviation of the logarithm", string.Empty,
            "Give it as a fraction: 20 % is about 0.2.");
    }
}
