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

    /// <summary>What the check does not know of a reading, and what it knows; null when it can be judged.</summary>
    public static string? Fault(Check check, Reading reading)
    {
        var given = reading switch
        {
            NotDoneReading => null,
            ChoiceReading choice => Choice(check, choice) is null ? $"\"{choice.Choice}\"" : null,
            CountReading count => Choice(check, count) is null ? $"{count.K} of {count.N}" : null,
            OpenReading => check.Number is { Open: true } ? null : "\"open\"",
            NumberReading { Number: var number } => check.Number is { } form && Units.Convert((double)number.Value.Value, number.Unit, form.Unit) is not null ? null : number.ToString(),
            _ => "a reading of another form",
        };
        return given is null ? null : $"The check knows no reading {given}; it knows {Known(check)}.";
    }

    private static string Known(Check check) => check.Number is { } form
        ? $"a number in {string.Join(", ", Units.Like(form.Unit))}{(form.Open ? ", or open" : "")}"
        : string.Join(", ", check.Choices.Select(c => c.Id)) + (check.Count is null ? "" : ", or a count");

    /// <summary>The choice that a reading stands for; null when it is none.</summary>
    public static string? Choice(Check check, Reading reading) => reading switch
    {
        ChoiceReading choice => check.Choices.Any(o => o.Id == choice.Choice) ? choice.Choice : null,
        CountReading count when check.Count is { } names => count.K == 0 ? names.None : count.K == count.N ? names.All : names.Some,
        _ => null,
    };
}
