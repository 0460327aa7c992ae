namespace Undercowl.Physics;

/// <summary>
/// Voltage to which stored energy can lift the capacitance of coil secondary, lead and plug:
/// V2 = sqrt(2 eta E / (C2 + C1/n^2)). A lumped energy balance (derived), the most there could be: no leakage, no spark
/// on the way, and nothing about rise time.
/// </summary>
/// <remarks>
/// Load 10 to 1000 pF (50 pF is the usual test load). Efficiency above 0 up to 1; it is the share of the energy that
/// arrives, not a percentage. NaN is refused everywhere.
/// </remarks>
public static class AvailableVoltage
{
    /// <summary>
    /// Capacitor discharge: the storage capacitor's energy goes into the load; kV. The balance knows no turns ratio, so a
    /// coil whose ratio times the storage voltage is less gives less.
    /// </summary>
    public static double CapacitorDischargeKilovolts(
        double capacitanceMicrofarads, double volts, double efficiency, double loadPicofarads)
    {
        ThrowIfNotLoad(efficiency, loadPicofarads);
        double millijoules = CapacitorEnergy.Millijoules(capacitanceMicrofarads, volts);
        return Kilovolts(efficiency * millijoules, loadPicofarads);
    }

    /// <summary>
    /// Inductive: the primary's energy goes into the load and into the capacitor across the points or switch (uF, 0 to
    /// 10; 0 when there is none), seen through the turns ratio (10 to 500); kV.
    /// </summary>
    public static double InductiveKilovolts(
        double inductanceMillihenries,
        double amperes,
        double primaryCapacitanceMicrofarads,
        double turnsRatio,
        double efficiency,
        double loadPicofarads)
    {
        ThrowIfNotLoad(efficiency, loadPicofarads);
        PhysicsRangeException.ThrowIfOutside(
            primaryCapacitanceMicrofarads, 0, 10, "capacitance across the switch", "uF", "Give microfarads: 200 nF is 0.2.");
        PhysicsRangeException.ThrowIfOutside(
            turnsRatio, 10, 500, "turns ratio", string.Empty, "Give secondary turns per primary turn, about 100.");
        double millijoules = InductorEnergy.Millijoules(inductanceMillihenries, amperes);
        double reflectedPicofarads = primaryCapacitanceMicrofarads * 1e6 / (turnsRatio * turnsRatio);
        return Kilovolts(efficiency * millijoules, loadPicofarads + reflectedPicofarads);
    }

    /// <summary>mJ into pF: sqrt(2 x 1e-3/1e-12 x mJ/pF) volts is sqrt(2000 mJ/pF) kilovolts.</summary>
    private static double Kilovolts(double millijoules, double picofarads) => Math.Sqrt(2000 * millijoules / picofarads);

    private static void ThrowIfNotLoad(double efficiency, double loadPicofarads)
    {
        PhysicsRangeException.ThrowIfOutside(
            efficiency, 0.01, 1, "share of the energy that arrives", string.Empty, "Give a fraction: 50 % is 0.5.");
        PhysicsRangeException.ThrowIfOutside(
            loadPicofarads, 10, 1000, "load capacitance", "pF", "Give picofarads: 0.05 nF is 50.");
    }
}
