namespace Undercowl.Physics;

/// <summary>
/// What a shunt leaves of the peak of an inductive coil: exp(-z acos z / sqrt(1 - z^2)) of the unshunted peak, with acosh
/// for z &gt; 1 and 1/e at z = 1. Energy in L ringing into C with R across it; derived from linear circuit theory,
/// not a published table.
/// </summary>
public static class ShuntedInductivePeak
{
    // Where acos z / sqrt(1 - z^2) is 0/0 its series is used. At this width the dropped cubic term (2/35) e^3 is below
    // 1e-13 and the direct form has lost no more than that.
    private const double SeriesWidth = 1e-4;

    /// <summary>From 1 at z = 0 (no shunt) falling towards 1/(2z); z from <see cref="ShuntDamping.Ratio"/>, 0 up.</summary>
    public static double Ratio(double damping)
    {
        ShuntDamping.ThrowIfOutside(damping);
        return Math.Exp(-damping * AngleOverSine(damping));
    }

    private static double AngleOverSine(double z)
    {
        double e = 1 - z;
        if (Math.Abs(e) < SeriesWidth)
        {
            return 1 + (e / 3) + (2 * e * e / 15);
        }

        // (1 - z)(1 + z), factored so that nothing cancels near 1 and nothing overflows for a huge z.
        return z < 1
            ? Math.Acos(z) / Math.Sqrt(e * (1 + z))
            : Math.Acosh(z) / (Math.Sqrt(-e) * Math.Sqrt(1 + z));
    }
}
