using Undercowl.Jobs;

namespace Undercowl.Diagnosis.Working;

/// <summary>Drafts what puts the engine back: set-up keys to their defaults, and parts to their own places.</summary>
public static class Restoring
{
    /// <summary>Stands for every item of the list.</summary>
    public const string All = "all";

    private const string SwapLead = "swap ";

    /// <param name="diagnosis">The job as it is.</param>
    /// <param name="key">One item of the restore list by its key; <see cref="All"/> for all; null is refused with the list.</param>
    public static Draft Draft(JobDiagnosis diagnosis, string? key)
    {
        ArgumentNullException.ThrowIfNull(diagnosis);
        var items = diagnosis.Restore;
        var chosen = items.Where(i => key == All || i.Key == key || i.Key == SwapLead + key).ToArray();
        if (chosen.Length == 0)
        {
            throw items.Count == 0 ? new DiagnosisException("Nothing is to be put back.", "The restore list is empty.")
                : key is null ? new DiagnosisException("It is not said what is back.", $"Name one of these, or {All} when all of it is: {string.Join("; ", items.Select(i => $"{i.Key} ({i.What})"))}.")
                : new DiagnosisException($"\"{key}\" is not on the restore list.", Near.Mend(key, items.Select(i => i.Key)));
        }

        var bodies = new List<EntryBody>();
        Dictionary<string, string> changes = chosen.Where(i => !i.Key.StartsWith(SwapLead, StringComparison.Ordinal)).ToDictionary(i => i.Key, i => Default(diagnosis, i.Key));
        if (changes.Count > 0)
        {
            bodies.AddRange(Drafting.SetUp(diagnosis, changes).Bodies);
        }

        var swapped = chosen.Where(i => i.Key.StartsWith(SwapLead, StringComparison.Ordinal)).Select(i => PartId.Parse(i.Key[SwapLead.Length..]).Kind).Distinct();
        bodies.AddRange(swapped.SelectMany(kind => Back(diagnosis.Projection, kind)));
        return new Draft(bodies, []);
    }

    private static string Default(JobDiagnosis diagnosis, string key)
    {
        var at = key.IndexOf('@', StringComparison.Ordinal);
        var id = at < 0 ? key : key[..at];
        return diagnosis.Knowledge.SetUps.First(k => k.Id == id).Default;
    }

    /// <summary>The swaps of one sort of part that bring each back to its own place, outputs and whole parts apart.</summary>
    private static IEnumerable<Swap> Back(Projection projection, string kind)
    {
        foreach (var swaps in projection.All<Swap>().Select(s => s.Body).Where(s => s.Part == kind).GroupBy(s => s.Output))
        {
            // Seat to the home of what sits there.
            var home = new Dictionary<Place, Place>();
            foreach (var swap in swaps)
            {
                (home[swap.A], home[swap.B]) = (home.GetValueOrDefault(swap.B, swap.B), home.GetValueOrDefault(swap.A, swap.A));
            }

            foreach (var seat in home.Keys.OrderBy(p => p.Text, StringComparer.Ordinal).ToArray())
            {
                while (home[seat] != seat)
                {
                    var other = home[seat];
                    yield return new Swap(kind, seat, other, swaps.Key);
                    (home[seat], home[other]) = (home[other], home[seat]);
                }
            }
        }
    }
}
