namespace Undercowl.Physics;

/// <summary>
/// Breakdown of a uniform gap by Townsend's criterion: V = B pd / ln(A pd / ln(1 + 1/gamma)). For understanding small
/// gaps and low pressures; at plug gaps in open air <see cref="UniformFieldGap"/> is closer to measurement.
/// </summary>
/// <remarks>
/// There is no solution at or left of pd = ln(1 + 1/gamma)/A: too few collisions for the avalanche to sustain itself.
/// Those values are refused; there the formula turns negative, and just right of it rises without bound. The constants are
/// fitted for E/p of 100 to 800 V/(cm Torr), which air leaves at about 12 Torr cm; beyond 20000 Torr cm all is refused.
/// </remarks>
public static class PaschenLaw
{
    private const double MaximumTorrCentimetres = 20000;

    /// <summary>Volts at the given pressure times distance; refused where the law has no solution.</summary>
    public static double BreakdownVolts(PressureDistance pressureDistance, TownsendCoefficients gas)
    {
        ArgumentNullException.ThrowIfNull(gas);
        double pd = pressureDistance.TorrCentimetres;
        double limit = NoSolutionUpTo(gas).TorrCentimetres;
        PhysicsRangeException.ThrowIfOutside(
            pd, Math.BitIncrement(limit), MaximumTorrCentimetres, "pressure times distance", "Torr cm",
            "At or below the lower limit the law has no solution: widen the gap, raise the pressure, or check the unit.");
        return gas.BVoltsPerTorrCentimetre * pd / Math.Log(pd / limit);
    }

    /// <summary>Lowest voltage at which this gas breaks down at any distance: e (B/A) ln(1 + 1/gamma).</summary>
    public static double MinimumVolts(TownsendCoefficients gas)
    {
        ArgumentNullException.ThrowIfNull(gas);
        return gas.BVoltsPerTorrCentimetre * MinimumAt(gas).TorrCentimetres;
    }

    /// <summary>Where that minimum lies: e ln(1 + 1/gamma)/A.</summary>
    public static PressureDistance MinimumAt(TownsendCoefficients gas)
    {
        ArgumentNullException.ThrowIfNull(gas);
        return PressureDistance.FromTorrCentimetres(Math.E * NoSolutionUpTo(gas).TorrCentimetres);
    }

    /// <summary>ln(1 + 1/gamma)/A: at this pressure times distance, and below it, the law has no solution.</summary>
    public static PressureDistance NoSolutionUpTo(TownsendCoefficients gas)
    {
        ArgumentNullException.ThrowIfNull(gas);
        return PressureDistance.FromTorrCentimetres(Math.Log(1 + (1 / gas.Gamma)) / gas.APerTorrCentimetre);
    }
}
