namespace Undercowl.Physics;

/// <summary>
/// Peak and effective (rms) value of a sine wave. Only for sine waves: an ignition pulse is none, and an ordinary
/// meter's a.c. volts on such a pulse convert to nothing. Any number is converted; NaN passes through.
/// </summary>
public static class SineWave
{
    private const double PeakPerEffective = 1.4142135623730951;

    public static double PeakFromEffective(double effective) => effective * PeakPerEffective;

    public static double EffectiveFromPeak(double peak) => peak / PeakPerEffective;
}
