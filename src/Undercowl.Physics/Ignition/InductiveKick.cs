namespace Undercowl.Physics;

/// <summary>
/// Mean voltage across an inductance whose current is stopped in a given time, L I/t. Shows why a switch arcs; the voltage
/// a real coil reaches is set by its capacitances (<see cref="AvailableVoltage"/>).
/// </summary>
public static class InductiveKick
{
    /// <summary>kV from mH (0.01 to 100), amperes (0 to 50) and microseconds (0.01 to 100000).</summary>
    public static double Kilovolts(double inductanceMillihenries, double amperes, double openingMicroseconds)
    {
        PhysicsRangeException.ThrowIfOutside(
            inductanceMillihenries, 0.01, 100, "inductance", "mH", "Give millihenries: 6 mH is 0.006 H.");
        PhysicsRangeException.ThrowIfOutside(amperes, 0, 50, "current", "A", "Give amperes.");
        PhysicsRangeException.ThrowIfOutside(
            openingMicroseconds, 0.01, 1e5, "opening time", "us", "Give microseconds: 1 ms is 1000.");
        return inductanceMillihenries * amperes / openingMicroseconds;
    }
}
