using Undercowl.Diagnosis.Readings;
using Undercowl.Jobs;
using Undercowl.Knowledge;

namespace Undercowl.Diagnosis;

/// <summary>
/// What an exchange did, told in one word, as the readings that it stands for: those taken again that were last taken at both places by
/// one check, traded, kept, or both as the better one.
/// </summary>
internal static class ReadAfterSwap
{
    private const string Moved = "moved", Stayed = "stayed", Cleared = "cleared";

    /// <summary>The readings after the exchange; refuses a word that is not known and an exchange before which nothing told the places apart.</summary>
    public static IEnumerable<EntryBody> Of(JobDiagnosis diagnosis, string part, string a, string b, string then)
    {
        if (then is not (Moved or Stayed or Cleared))
        {
            throw new DiagnosisException($"\"{then}\" is not what a fault does by an exchange.", $"Use one of: {Moved}, {Stayed}, {Cleared}.");
        }

        var layout = diagnosis.Layout;
        LayoutPlaces.TryCylinders(layout, a, out var first);
        LayoutPlaces.TryCylinders(layout, b, out var second);
        var told = first.Zip(second).SelectMany(lanes => Pairs(diagnosis, lanes.First, lanes.Second)).ToArray();
        if (told.Length == 0)
        {
            throw new DiagnosisException(
                $"Nothing was read at both {a} and {b} that told them apart, so what the {part} did cannot be told by \"{then}\".",
                "Record first what one check read at each before the exchange, or record what each reads after it.");
        }

        foreach (var (here, there) in told)
        {
            var worse = Goodness(diagnosis, here) < Goodness(diagnosis, there);
            yield return then switch { Moved => here with { Value = there.Value }, Stayed => here, _ => here with { Value = worse ? there.Value : here.Value } };
            yield return then switch { Moved => there with { Value = here.Value }, Stayed => there, _ => there with { Value = worse ? there.Value : here.Value } };
        }
    }

    /// <summary>The last readings of two cylinders by one check in one set-up, where they differ; of several checks the last taken.</summary>
    private static IEnumerable<(Finding Here, Finding There)> Pairs(JobDiagnosis diagnosis, int first, int second) => diagnosis.Projection.Findings
        .Select(f => f.Body).Reverse()
        .Where(f => f.Place.Cylinders is [var lane] && (lane == first || lane == second) && Goodness(diagnosis, f) is not null)
        .GroupBy(f => (f.Check, SetUp: string.Join(';', f.SetUp.OrderBy(s => s.Key, StringComparer.Ordinal))))
        .Select(g => (Here: g.FirstOrDefault(f => f.Place.Cylinders[0] == first), There: g.FirstOrDefault(f => f.Place.Cylinders[0] == second)))
        .Where(p => p is { Here: not null, There: not null } && Goodness(diagnosis, p.Here) != Goodness(diagnosis, p.There))
        .Select(p => (p.Here!, p.There!)).Take(1);

    /// <summary>How much a reading of a quantity speaks for its best level; null when it is no choice of one.</summary>
    private static double? Goodness(JobDiagnosis diagnosis, Finding finding)
    {
        if (diagnosis.Knowledge.CheckOf(finding.Check) is not { Likelihood: { Quantity: { } quantity } likelihood } check
            || ReadingLikelihood.Choice(check, finding.Value) is not { } choice)
        {
            return null;
        }

        return likelihood.GapChoices is { } gap ? Array.IndexOf([gap.Never, gap.Sometimes, gap.Always], choice)
            : likelihood.Given.GetValueOrDefault(diagnosis.Network.Model.Quantity(quantity).Levels[0])?.GetValueOrDefault(choice);
    }
}
