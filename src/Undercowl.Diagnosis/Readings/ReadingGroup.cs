using Undercowl.Jobs;
using Undercowl.Knowledge;

namespace Undercowl.Diagnosis.Readings;

/// <summary>
/// Readings that err together: the same check at the same place with the same tool by the same hand of the same copy of a
/// quantity. What errs lastingly is drawn once for the group; only the rest is drawn afresh at each reading. The group gives
/// one likelihood per level.
/// </summary>
/// <param name="Check">The check.</param>
/// <param name="Levels">Names of the levels, or of the conditions with <c>sound</c> first.</param>
/// <param name="Doubt">Chance (0 to 1) that what the hand reports has nothing to do with the case.</param>
/// <param name="Readings">At least one.</param>
/// <param name="Kilovolts">For readings of a gap: the available voltage by level, null or 0 where there is none.</param>
internal sealed record ReadingGroup(
    Check Check, IReadOnlyList<string> Levels, double Doubt, IReadOnlyList<TakenReading> Readings, IReadOnlyList<double?>? Kilovolts = null);

/// <summary>A reading with the settings and circumstances it was taken in.</summary>
/// <param name="Value">The reading.</param>
/// <param name="SetUp">The finding's set-up, which holds the settings of the tool.</param>
/// <param name="Circumstances">Weather, speed and specs.</param>
internal sealed record TakenReading(Reading Value, IReadOnlyDictionary<string, string> SetUp, Circumstances Circumstances);
