namespace Undercowl.Physics;

/// <summary>
/// Damping ratio z = sqrt(L/C)/(2R) of an inductance and a capacitance with a resistance across the capacitance: how heavily
/// a conducting deposit loads a secondary. 0 is no shunt; below 1 it still rings.
/// </summary>
public static class ShuntDamping
{
    /// <summary>
    /// L 0.001 to 1000 H (secondary inductance, or leakage for a capacitor discharge), C 10 to 1000 pF, shunt 0.001 megohm
    /// up; infinity is an open circuit and gives 0.
    /// </summary>
    public static double Ratio(double inductanceHenries, double capacitancePicofarads, double shuntMegohms)
    {
        PhysicsRangeException.ThrowIfOutside(
            inductanceHenries, 0.001, 1000, "secondary inductance", "H", "Give henries: 80000 mH is 80 H.");
        PhysicsRangeException.ThrowIfOutside(
            capacitancePicofarads, 10, 1000, "load capacitance", "pF", "Give picofarads: 0.05 nF is 50.");
        PhysicsRangeException.ThrowIfOutside(
            shuntMegohms, 0.001, double.PositiveInfinity, "shunt resistance", "megohm", "Give megohms: 500 kohm is 0.5.");

        // sqrt(H/pF) is sqrt(H/F) x 1e-6, and the resistance is in units of 1e6 ohm: the two cancel.
        return Math.Sqrt(inductanceHenries / capacitancePicofarads) / (2 * shuntMegohms);
    }

    internal static void ThrowIfOutside(double damping) =>
        PhysicsRangeException.ThrowIfOutside(
            damping, 0, double.MaxValue, "damping ratio", string.Empty, "Give sqrt(L/C)/(2R), a number from 0 up.");
}
