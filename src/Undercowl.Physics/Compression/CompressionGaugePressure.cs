namespace Undercowl.Physics;

/// <summary>
/// Gauge pressure a sound cylinder can reach when cranked: (r^n - 1) times ambient, r the ratio from the closing of the last
/// port or valve, n the polytropic exponent. An upper guide, not a specification: leakage and the gauge's own volume lower
/// it. A two-stroke's full geometric ratio gives too much.
/// </summary>
/// <remarks>
/// Ratio 1 to 25 (1 gives zero); exponent 1 to 1.4: 1.2 to 1.3 is used for cranking, 1.4 is adiabatic; ambient 60 to 110 kPa
/// absolute.
/// </remarks>
public static class CompressionGaugePressure
{
    /// <summary>kPa gauge.</summary>
    public static double GaugeKilopascals(
        double compressionRatio, double polytropicExponent, double ambientKilopascals = Pressure.StandardAtmosphereKilopascals)
    {
        PhysicsRangeException.ThrowIfOutside(
            compressionRatio, 1, 25, "compression ratio", string.Empty, "Give the ratio itself: 7.5 for 7.5 to 1.");
        ThrowIfNotExponent(polytropicExponent);
        CompressionAltitude.ThrowIfNotAmbient(ambientKilopascals);
        return (Math.Pow(compressionRatio, polytropicExponent) - 1) * ambientKilopascals;
    }

    /// <summary>
    /// The ratio that would give this gauge reading; the inverse of <see cref="GaugeKilopascals"/>. Readings that would need
    /// more than 25 to 1 are refused.
    /// </summary>
    public static double EffectiveRatio(
        double gaugeKilopascals, double polytropicExponent, double ambientKilopascals = Pressure.StandardAtmosphereKilopascals)
    {
        ThrowIfNotExponent(polytropicExponent);
        CompressionAltitude.ThrowIfNotAmbient(ambientKilopascals);
        PhysicsRangeException.ThrowIfOutside(
            gaugeKilopascals, 0, (Math.Pow(25, polytropicExponent) - 1) * ambientKilopascals,
            "compression reading", "kPa gauge", "Give kPa as the gauge shows it: 120 psi is 827.");
        return Math.Pow(1 + (gaugeKilopascals / ambientKilopascals), 1 / polytropicExponent);
    }

    private static void ThrowIfNotExponent(double polytropicExponent) =>
        PhysicsRangeException.ThrowIfOutside(
            polytropicExponent, 1, 1.4, "polytropic exponent", string.Empty, "Use 1.2 to 1.3 for a cranked engine.");
}
