using Undercowl.Knowledge;
using Undercowl.Physics;

namespace Undercowl.Diagnosis.Readings;

/// <summary>
/// Corrections of measured values to the circumstances of their reference. Nothing known, nothing corrected; a value that
/// the law does not reach, as after a slip in typing, stays as it was read.
/// </summary>
internal static class Corrections
{
    /// <summary>Peak voltages are not carried further than this from the speed they were read at.</summary>
    private const double FurthestSpeed = 1.9;

    public static double Apply(Correction correction, double value, string unit, Circumstances at)
    {
        try
        {
            return Corrected(correction, value, unit, at);
        }
        catch (PhysicsRangeException)
        {
            return value;
        }
    }

    private static double Corrected(Correction correction, double value, string unit, Circumstances at) => correction switch
    {
        Correction.CopperTo20 when at.Celsius is { } celsius => ConductorResistance.OhmsAt20Celsius(ConductorMetal.Copper, value, celsius),
        Correction.GaugeToSeaLevel when at.AmbientKilopascals is { } ambient => SeaLevel(value, unit, ambient),
        Correction.PeakToSpecSpeed when at is { CrankingRpm: { } found and > 0, SpecRpm: { } wanted } =>
            CrankingPeakVoltage.PeakVoltsAt(PeakVoltageFamily.Winding, Math.Clamp(wanted, found / FurthestSpeed, found * FurthestSpeed), value, found),
        Correction.RestVoltageTo27 when at.Celsius is { } celsius => LeadAcidStateOfCharge.VoltsAtReference(value, celsius),
        _ => value,
    };

    private static double SeaLevel(double value, string unit, double ambient)
    {
        var kilopascals = Units.Convert(value, unit, "kPa") ?? value;
        return Units.Convert(CompressionAltitude.SeaLevelGaugeKilopascals(kilopascals, ambient), "kPa", unit) ?? value;
    }
}
