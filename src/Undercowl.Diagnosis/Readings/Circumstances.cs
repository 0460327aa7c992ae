using Undercowl.Physics;

namespace Undercowl.Diagnosis.Readings;

/// <summary>What a value must be corrected for. Null where nothing was said: then no correction is made.</summary>
/// <param name="Celsius">Air and part temperature.</param>
/// <param name="AmbientKilopascals">Air pressure at the place.</param>
/// <param name="CrankingRpm">The cranking speed found in this state of the engine, else at all.</param>
/// <param name="SpecRpm">The speed that peak-voltage specs are stated for.</param>
/// <param name="Reference">What the value is compared with.</param>
/// <param name="Shape">Electrodes of the tester.</param>
/// <param name="LeadOhms">What the meter's own leads may put in or leave out, in ohms, as a standard deviation; 0 where no resistance is measured.</param>
internal sealed record Circumstances(
    double? Celsius, double? AmbientKilopascals, double? CrankingRpm, double? SpecRpm, Reference? Reference, ElectrodeShape? Shape, double LeadOhms = 0)
{
    /// <summary>Air density relative to 20 °C and 101.325 kPa; 1 when nothing is known.</summary>
    public double AirDensity => AirDensityFactor.RelativeTo20Celsius(AmbientKilopascals ?? 101.325, Celsius ?? 20);
}

/// <summary>A specification: of this engine when it was entered, generic otherwise.</summary>
/// <param name="Low">Lower bound, or null.</param>
/// <param name="High">Upper bound, or null.</param>
/// <param name="Unit">Unit of both.</param>
/// <param name="Own">True when it is the engine's own, from its service manual.</param>
/// <param name="From">Where it comes from, to be shown.</param>
/// <param name="Spread">How far this engine may be from it, standard deviation of the natural logarithm; null as the check says of a generic range.</param>
internal sealed record Reference(double? Low, double? High, string Unit, bool Own, string From, double? Spread = null)
{
    /// <summary>What a value is divided by: the geometric middle, or the only bound.</summary>
    public double Middle => Low is { } low && High is { } high ? Math.Sqrt(low * high) : Low ?? High ?? 1;
}
