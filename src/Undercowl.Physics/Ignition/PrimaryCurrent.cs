namespace Undercowl.Physics;

/// <summary>
/// Current that builds up in a coil's primary: I = (V/R)(1 - exp(-R t/L)). Heywood, Internal Combustion Engine
/// Fundamentals, 1988, eq. 9.53. Only while the coil follows a straight line: saturation makes the real current rise
/// faster, a current-limiting driver stops it earlier.
/// </summary>
public static class PrimaryCurrent
{
    /// <summary>
    /// Amperes after the given time. Volts 0 to 100, ohms of the whole primary circuit 0.05 to 50, mH 0.01 to 100, ms 0 to
    /// 10000. Zero time gives zero; a long time gives V/R.
    /// </summary>
    public static double Amperes(double volts, double ohms, double inductanceMillihenries, double milliseconds)
    {
        PhysicsRangeException.ThrowIfOutside(volts, 0, 100, "supply voltage", "V", "Give volts at the coil's feed.");
        PhysicsRangeException.ThrowIfOutside(
            ohms, 0.05, 50, "primary circuit resistance", "ohm", "Give ohms of the primary with its leads, not the secondary.");
        PhysicsRangeException.ThrowIfOutside(
            inductanceMillihenries, 0.01, 100, "primary inductance", "mH", "Give millihenries: 6 mH is 0.006 H.");
        PhysicsRangeException.ThrowIfOutside(
            milliseconds, 0, 10000, "time the primary is closed", "ms", "Give milliseconds, not degrees or seconds.");
        return volts / ohms * (1 - Math.Exp(-ohms * milliseconds / inductanceMillihenries));
    }
}
