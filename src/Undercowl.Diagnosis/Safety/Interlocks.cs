using Undercowl.Diagnosis.Readings;
using Undercowl.Jobs;
using Undercowl.Knowledge;

namespace Undercowl.Diagnosis.Safety;

/// <summary>Follows each interlock through the job's entries, in canonical order.</summary>
internal static class Interlocks
{
    public static IReadOnlyList<InterlockStatus> Of(KnowledgeBase knowledge, Projection projection) =>
        [.. knowledge.Interlocks.Select(rule => Follow(rule, knowledge, projection))];

    private static InterlockStatus Follow(Knowledge.Interlock rule, KnowledgeBase knowledge, Projection projection)
    {
        var (clear, known, opened) = (!rule.UntilKnown, false, false);
        var met = new HashSet<string>();
        var smelt = new HashSet<string>();
        var setUp = new Dictionary<string, string>();
        foreach (var entry in projection.Live)
        {
            if (rule.OpenedBy.Any(e => Matches(e, entry, knowledge)))
            {
                (clear, known, opened) = (false, true, true);
                met.Clear();
                smelt.Clear();
                if (entry.Body is Jobs.Remedy done && knowledge.RemedyOf(done.Action) is { } remedy)
                {
                    met.UnionWith(remedy.Meets.Where(m => rule.Lift.Any(l => l.Id == m)));
                }
            }
            else if (rule.OpenedBy.Any(e => Doubts(e, entry, knowledge, setUp)))
            {
                (clear, known) = (false, false);
                smelt.Clear();
            }
            else if (entry.Body is not Finding { Hearsay: true } && rule.ClearedBy.Any(e => Matches(e, entry, knowledge)))
            {
                known = true;
                clear = !opened || rule.Lift.All(l => met.Contains(l.Id));
            }
            else if (entry.Body is Jobs.Interlock answer && rule.Lift.Any(l => l.Id == answer.Id))
            {
                known = true;
                if (answer.State == Jobs.Interlock.Met)
                {
                    met.Add(answer.Id);
                    (clear, opened) = rule.Lift.All(l => met.Contains(l.Id)) ? (true, false) : (clear, opened);
                }
                else
                {
                    // Taken back, or not known after all: neither is safe.
                    met.Remove(answer.Id);
                    (clear, opened) = (false, true);
                }
            }

            else if (entry.Body is Ventilated ventilated && rule.Smelt is { } smelling)
            {
                smelt.UnionWith(ventilated.Clear);
                if (smelling.Places.All(smelt.Contains))
                {
                    // Nothing was found before: then air that smells clear is all that is asked.
                    met.Add(smelling.States);
                    known = true;
                    clear = !opened || rule.Lift.All(l => met.Contains(l.Id));
                    opened &= !clear;
                }
            }

            foreach (var (key, value) in SetUpOf(entry))
            {
                setUp[key] = value;
            }
        }

        return new InterlockStatus(rule, clear, known, clear || !opened ? [] : [.. rule.Lift.Where(l => !met.Contains(l.Id))])
        {
            ToSmell = clear || rule.Smelt is not { } wanted || (opened && met.Contains(wanted.States)) ? [] : [.. wanted.Places.Where(p => !smelt.Contains(p))],
        };
    }

    /// <summary>
    /// A check that itself does what opens the interlock, or brings about a set-up that does: nothing was found, but how things
    /// stand must be seen again.
    /// </summary>
    private static bool Doubts(InterlockEvent wanted, Entry entry, KnowledgeBase knowledge, Dictionary<string, string> before) =>
        wanted.Does is { } does && entry.Body is not Finding { Value: NotDoneReading }
        && ((entry.Body is Finding finding && knowledge.CheckOf(finding.Check)?.Hazards.Contains(does) == true)
            || SetUpOf(entry).Any(s => before.GetValueOrDefault(s.Key) != s.Value && knowledge.SetUps.FirstOrDefault(k => k.Id == s.Key.Split('@')[0])?.Values.FirstOrDefault(v => v.Id == s.Value)?.Hazards.Contains(does) == true));

    private static IReadOnlyDictionary<string, string> SetUpOf(Entry entry) => entry.Body switch
    {
        Finding finding => finding.SetUp,
        SetUpChange change => change.Change,
        _ => new Dictionary<string, string>(),
    };

    private static bool Matches(InterlockEvent wanted, Entry entry, KnowledgeBase knowledge) => entry.Body switch
    {
        Finding finding => knowledge.CheckOf(finding.Check) is { } check && wanted.Check == check.Id
            && ReadingLikelihood.Choice(check, finding.Value) is { } choice
            && (wanted.Choice is null || wanted.Choice.Contains(choice)),
        Jobs.Remedy remedy => wanted.Does is not null
            && knowledge.RemedyOf(remedy.Action)?.Does.Contains(wanted.Does) == true,
        Intake intake => wanted.Question == knowledge.Today(intake.Question) && (wanted.Answer is null || wanted.Answer.Contains(intake.Answer)),
        _ => false,
    };
}
