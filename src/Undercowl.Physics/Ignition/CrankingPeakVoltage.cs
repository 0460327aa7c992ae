namespace Undercowl.Physics;

/// <summary>
/// A winding's peak voltage read at one speed, as it would be at another: proportional to speed (induction law). Refused for
/// regulated outputs, which do not follow it.
/// </summary>
/// <remarks>
/// Only for speeds within a factor of two. Published rows show why: a loaded trigger winding goes from 2.7 V at 400 rpm to 7 V
/// at 1500, not to the 10.1 V of the proportion. Loaded charge windings flatten sooner still, so read the result as the
/// largest change that speed alone explains. Speeds 20 to 10000 rpm; volts 0 to 1000; zero volts stays zero.
/// </remarks>
public static class CrankingPeakVoltage
{
    /// <summary>Smallest and largest ratio of the two speeds is 1/2 and 2; ours, an estimate.</summary>
    public const double MaximumSpeedRatio = 2;

    /// <summary>Peak volts to expect at <paramref name="wantedRpm"/> from a reading taken at <paramref name="measuredRpm"/>.</summary>
    public static double PeakVoltsAt(PeakVoltageFamily family, double wantedRpm, double measuredPeakVolts, double measuredRpm)
    {
        if (family != PeakVoltageFamily.Winding)
        {
            throw new PhysicsRangeException(
                "source of the peak voltage", family.ToString(), "a winding",
                "A regulated output hardly changes with speed: compare it with the specification as read.");
        }

        PhysicsRangeException.ThrowIfOutside(
            measuredPeakVolts, 0, 1000, "peak voltage", "V", "Give volts read with a peak-reading adapter.");
        PhysicsRangeException.ThrowIfOutside(
            measuredRpm, 20, 10000, "speed at the reading", "rpm", "Give crankshaft revolutions a minute.");
        PhysicsRangeException.ThrowIfOutside(
            wantedRpm, measuredRpm / MaximumSpeedRatio, measuredRpm * MaximumSpeedRatio, "speed of the specification", "rpm",
            "Proportion holds only between nearby speeds: read again nearer to the specification's speed.");
        return measuredPeakVolts * (wantedRpm / measuredRpm);
    }
}
