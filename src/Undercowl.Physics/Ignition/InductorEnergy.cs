namespace Undercowl.Physics;

/// <summary>Energy in a coil's primary while current flows, L I^2/2. Not what reaches the spark.</summary>
public static class InductorEnergy
{
    /// <summary>mJ from mH (0.01 to 100) and amperes (0 to 50). Zero amperes gives zero.</summary>
    public static double Millijoules(double inductanceMillihenries, double amperes)
    {
        PhysicsRangeException.ThrowIfOutside(
            inductanceMillihenries, 0.01, 100, "primary inductance", "mH", "Give millihenries: 6 mH is 0.006 H.");
        PhysicsRangeException.ThrowIfOutside(amperes, 0, 50, "primary current", "A", "Give amperes in the primary.");
        return inductanceMillihenries * amperes * amperes / 2;
    }
}
