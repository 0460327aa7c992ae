namespace Undercowl.Physics;

/// <summary>
/// A compression gauge reading carried between places: the absolute pressure (gauge plus ambient) scales with ambient
/// pressure. Not with density: printed altitude factors such as 0.9428 at 2000 ft are density ratios and correct too
/// little (pressure gives 0.9298).
/// </summary>
/// <remarks>
/// Gauge pressure 0 to 5000 kPa, ambient 60 to 110 kPa absolute. Zero stays zero: a hole compresses nothing anywhere.
/// </remarks>
public static class CompressionAltitude
{
    /// <summary>What the gauge would read in ambient pressure <paramref name="wantedAmbientKilopascals"/>; kPa gauge.</summary>
    public static double GaugeKilopascalsAt(
        double wantedAmbientKilopascals, double gaugeKilopascals, double measuredAmbientKilopascals)
    {
        PhysicsRangeException.ThrowIfOutside(
            gaugeKilopascals, 0, 5000, "compression reading", "kPa gauge", "Give kPa as the gauge shows it: 120 psi is 827.");
        ThrowIfNotAmbient(measuredAmbientKilopascals);
        ThrowIfNotAmbient(wantedAmbientKilopascals);

        // (g + p) r - p r with r the ratio of the ambients: the ambient parts cancel and the gauge reading scales alone.
        return gaugeKilopascals * (wantedAmbientKilopascals / measuredAmbientKilopascals);
    }

    /// <summary>What the gauge would read at the standard sea-level pressure of 101.325 kPa; kPa gauge.</summary>
    public static double SeaLevelGaugeKilopascals(double gaugeKilopascals, double measuredAmbientKilopascals) =>
        GaugeKilopascalsAt(Pressure.StandardAtmosphereKilopascals, gaugeKilopascals, measuredAmbientKilopascals);

    internal static void ThrowIfNotAmbient(double kilopascals) =>
        PhysicsRangeException.ThrowIfOutside(
            kilopascals, 60, 110, "ambient pressure", "kPa",
            "Give the absolute pressure at the place in kPa: 14.7 psi is 101.4, 29.92 inHg is 101.3.");
}
