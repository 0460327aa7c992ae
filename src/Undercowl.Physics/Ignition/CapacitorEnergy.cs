namespace Undercowl.Physics;

/// <summary>
/// Energy in a charged capacitor, C V^2/2. Not the energy that reaches the spark, which is a fraction of it. A capacitor
/// that is dangerous to touch may hold its charge after the engine has stopped.
/// </summary>
public static class CapacitorEnergy
{
    /// <summary>mJ from uF (0.00001 to 100) and volts (0 to 50000). Zero volts gives zero.</summary>
    public static double Millijoules(double capacitanceMicrofarads, double volts)
    {
        PhysicsRangeException.ThrowIfOutside(
            capacitanceMicrofarads, 1e-5, 100, "capacitance", "uF", "Give microfarads: 470 nF is 0.47, 50 pF is 0.00005, 1e-6 F is 1.");
        PhysicsRangeException.ThrowIfOutside(volts, 0, 50000, "capacitor voltage", "V", "Give volts across the capacitor, 0 or more.");
        return capacitanceMicrofarads * volts * volts / 2000;
    }
}
