namespace Undercowl.Physics;

/// <summary>
/// What a shunt leaves of the peak of a capacitor discharge: (1 + exp(-pi z / sqrt(1 - z^2)))/2 of the unshunted peak. A
/// step behind the coil's leakage inductance drives C with R across it; derived from linear circuit theory, not a
/// published table.
/// </summary>
/// <remarks>
/// The drive is ideal and does not sag, so the ratio never falls below one half; a storage capacitor that empties into a
/// low shunt does. Believe it for z below about 0.3.
/// </remarks>
public static class ShuntedCapacitorDischargePeak
{
    /// <summary>From 1 at z = 0 (no shunt) to 0.5 at z = 1 and beyond, where there is no overshoot left.</summary>
    public static double Ratio(double damping)
    {
        ShuntDamping.ThrowIfOutside(damping);
        return damping >= 1
            ? 0.5
            : (1 + Math.Exp(-Math.PI * damping / Math.Sqrt((1 - damping) * (1 + damping)))) / 2;
    }
}
