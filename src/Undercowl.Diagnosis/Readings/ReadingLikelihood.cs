using Undercowl.Jobs;
using Undercowl.Knowledge;

namespace Undercowl.Diagnosis.Readings;

/// <summary>The likelihood of a group of readings for each level.</summary>
internal static class ReadingLikelihood
{
    /// <summary>One number per level, more than 0; null when the group says nothing (could not be done, or not understood).</summary>
    public static double[]? Of(ReadingGroup group) => group.Check.Likelihood.Model switch
    {
        LikelihoodModel.Table => TableReadings.Likelihood(group),
        LikelihoodModel.Gap => GapReadings.Likelihood(group),
        _ => DensityReadings.Likelihood(group),
    };

    /// <summary>The choice that a reading stands for; null when it is none.</summary>
    public static string? Choice(Check check, Reading reading) => reading switch
    {
        ChoiceReading choice => check.Choices.Any(o => o.Id == choice.Choice) ? choice.Choice : null,
        CountReading count when check.Count is { } names => count.K == 0 ? names.None : count.K == count.N ? names.All : names.Some,
        _ => null,
    };
}
