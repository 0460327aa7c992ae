using Undercowl.Diagnosis.Beliefs;
using Undercowl.Diagnosis.Engine;
using Undercowl.Diagnosis.History;
using Undercowl.Diagnosis.Planning;
using Undercowl.Diagnosis.Readings;
using Undercowl.Jobs;
using Undercowl.Knowledge;

namespace Undercowl.Diagnosis.Safety;

/// <summary>
/// What is to be shown before the repair counts as proven, besides the complaint's own test, and what of it has not been. A reading counts from
/// the last remedy, swap or state to be undone on, and until a later reading of the same is not good; not what somebody tells, nor what was read in a state to be undone.
/// </summary>
internal sealed class ToShow
{
    /// <summary>From this chance on that what was wrong comes and goes by itself, it must have been good more than once. Estimate: likelier than not.</summary>
    private const double LikelyComesAndGoes = 0.5;

    private readonly JobNetwork _network;

    public ToShow(JobNetwork network, Belief belief)
    {
        _network = network;
        var complaints = network.Projection.Complaints
            .Select(said => network.Model.Knowledge.ComplaintOf(said.Id)).OfType<Knowledge.Complaint>();
        HashSet<string> named = [.. complaints.SelectMany(c => c.Proofs)];
        Missing = [.. network.Model.Knowledge.Proofs
            .Where(p => p.Only.Holds(network.Model.Layout) && Checks(network.Model, p).Any())
            .Where(p => p.Always || named.Contains(p.Id) || (p.After is { } after && Done(after)) || (p.ComesAndGoes && ComesAndGoes(network.Model, belief) >= LikelyComesAndGoes))
            .Where(p => Good(network, p.Checks, p.SetUp, p.Good).Count < (p.Occasions ?? 1))];
    }

    /// <summary>What has still to be shown, in the order of their ids.</summary>
    public IReadOnlyList<ProofItem> Missing { get; }

    /// <summary>The check by which it is shown next, its place, and the states that it is to be made in: another heat than the engine has, where one of them brings it about.</summary>
    public (Check Check, string Place, IReadOnlyDictionary<string, string> SetUp) Next(ProofItem item, StandingEngine standing)
    {
        var model = _network.Model;
        var possible = Checks(model, item).ToArray();
        var check = item.Occasions > 1 && Array.Find(possible, c => c.SetUp.Any(s => OtherHeat(s.Key, s.Value))) is { } provoking ? provoking : possible[0];
        return (check, Candidates.Places(model, check).First(), item.SetUp.Where(s => !s.Value.Contains(standing.Left.GetValueOrDefault(s.Key, model.SetUpKey(s.Key)!.Default)))
            .ToDictionary(s => s.Key, s => s.Value.Values[^1]));

        bool OtherHeat(string key, string value) => model.SetUpKey(key) is { EndsOccasion: true } known && standing.Left.GetValueOrDefault(key, known.Default) != value;
    }

    /// <summary>The occasions on which one of the checks read good, in those states and no other that is to be undone, and nothing has undone it since.</summary>
    public static HashSet<string> Good(JobNetwork network, IReadOnlyList<string> checks, IReadOnlyDictionary<string, OneOrMore> setUp, IReadOnlyList<string> good)
    {
        var (model, projection) = (network.Model, network.Projection);
        var occasions = new HashSet<string>();
        var stood = new Dictionary<string, string>();
        foreach (var entry in projection.Live)
        {
            var brought = entry.Body switch
            {
                Finding finding => finding.SetUp,
                SetUpChange change => change.Change,
                _ => new Dictionary<string, string>(),
            };
            if (entry.Body is Jobs.Remedy or Swap || brought.Any(s => stood.GetValueOrDefault(s.Key) != s.Value && ToUndo(model, s.Key, s.Value)))
            {
                occasions.Clear();
            }

            foreach (var (key, value) in brought)
            {
                stood[key] = value;
            }

            if (entry.Body is Finding read && checks.Contains(model.Knowledge.Today(read.Check)) && read.Value is not NotDoneReading
                && setUp.All(s => s.Value.Contains(read.SetUp.GetValueOrDefault(s.Key, model.SetUpKey(s.Key)?.Default ?? "")))
                && model.Knowledge.CheckOf(read.Check) is { } check)
            {
                if (ReadingLikelihood.Choice(check, read.Value) is not { } choice || !good.Contains(choice))
                {
                    occasions.Clear();
                }
                else if (!read.Hearsay && !read.SetUp.Any(s => ToUndo(model, s.Key, s.Value) && Wanted(check, s.Key) != s.Value))
                {
                    occasions.Add(read.Occasion);
                }
            }
        }

        return occasions;

        string? Wanted(Check check, string key) => check.SetUp.GetValueOrDefault(key) ?? (setUp.GetValueOrDefault(key) is { Values: [var only] } ? only : null);
    }

    private static bool ToUndo(EngineModel model, string name, string value) =>
        model.SetUpKey(name.Split('@')[0])?.Values.FirstOrDefault(v => v.Id == value)?.Restore is not null;

    private static IEnumerable<Check> Checks(EngineModel model, ProofItem item) =>
        item.Checks.Select(id => Array.Find(model.Checks, c => c.Id == id)).OfType<Check>().Where(c => Candidates.Places(model, c).Any());

    private static double ComesAndGoes(EngineModel model, Belief belief) => model.Aspects.Sum(a =>
        a.Conditions.Select((c, i) => c.Shows is null ? 0 : belief.AsFound(a, i + 1)).Sum());

    private bool Done(string deed) => _network.Projection.Live.Any(e => e.Body switch
    {
        Jobs.Remedy remedy => _network.Model.Knowledge.RemedyOf(remedy.Action)?.Does.Contains(deed) == true,
        Finding { Value: not NotDoneReading } finding => _network.Model.Knowledge.CheckOf(finding.Check) is { } check
            && Candidates.Hazards(_network.Model, check, finding.SetUp).Contains(deed),
        _ => false,
    });
}
