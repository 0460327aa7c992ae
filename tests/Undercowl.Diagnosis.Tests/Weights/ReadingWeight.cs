using System.Globalization;
using Undercowl.Diagnosis.Readings;
using Undercowl.Jobs;
using Undercowl.Knowledge;

namespace Undercowl.Diagnosis.Tests.Weights;

/// <summary>
/// One reading of a check and how far it can move any cause, whatever else is known: the ratio of the likelihoods of two levels bounds
/// the ratio of the odds before and after (Bayes' rule in odds form; the odds of a cause are moved by a mean of the levels' likelihoods over a mean).
/// </summary>
/// <param name="Reading">As it is read.</param>
/// <param name="Decibans">The most that it can move a cause.</param>
/// <param name="Generic">False when the engine's own figure was given.</param>
internal sealed record ReadingWeight(string Reading, double Decibans, bool Generic)
{
    /// <summary>Ratios to the reference, or values, that are tried: 1/1000 to 1000, ten to the decade.</summary>
    private const int PerDecade = 10;

    public static IEnumerable<ReadingWeight> Of(Check check, LaidFinding laid)
    {
        foreach (var reading in Readings(check, laid))
        {
            var likelihood = Likelihood(laid, reading);
            yield return new ReadingWeight(Words(reading), 10 * Math.Log10(likelihood.Max() / likelihood.Min()), laid.Reading.Circumstances.Reference is not { Own: true });
        }
    }

    /// <summary>The chance or density of the reading at each level, for a hand without doubt.</summary>
    public static double[] Likelihood(LaidFinding laid, Reading reading) =>
        ReadingLikelihood.Of(new ReadingGroup(laid.Check, laid.Levels, 0, [laid.Reading with { Value = reading }], laid.Kilovolts))!;

    private static IEnumerable<Reading> Readings(Check check, LaidFinding laid)
    {
        foreach (var choice in check.Choices)
        {
            yield return new ChoiceReading(choice.Id);
        }

        if (check.Number is not { } form)
        {
            yield break;
        }

        if (form.Open)
        {
            yield return new OpenReading();
        }

        var middle = laid.Reading.Circumstances.Reference is { } reference ? Units.Convert(reference.Middle, reference.Unit, form.Unit) ?? 1 : 1;
        for (var i = -3 * PerDecade; i <= 3 * PerDecade; i++)
        {
            var value = double.Parse((middle * Math.Pow(10, (double)i / PerDecade)).ToString("G3", CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
            if (value >= form.Low && value <= form.High)
            {
                yield return new NumberReading(new Measured(DecimalText.Parse(value.ToString("0.#########", CultureInfo.InvariantCulture)), form.Unit));
            }
        }
    }

    private static string Words(Reading reading) => reading switch
    {
        ChoiceReading choice => choice.Choice,
        OpenReading => "over range",
        NumberReading number => number.Number.ToString(),
        _ => reading.ToString() ?? "",
    };
}
