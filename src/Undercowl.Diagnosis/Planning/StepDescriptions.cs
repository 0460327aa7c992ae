using Undercowl.Diagnosis.Answers;
using Undercowl.Diagnosis.History;
using Undercowl.Diagnosis.Readings;
using Undercowl.Diagnosis.Safety;
using Undercowl.Diagnosis.Working;
using Undercowl.Knowledge;

namespace Undercowl.Diagnosis.Planning;

/// <summary>Puts steps into words: what to do, with which cautions, and what each answer would mean.</summary>
internal sealed class StepDescriptions(JobNetwork network, StandingEngine standing, Effort effort, Costs costs, DrawnOutcomes outcomes, Repairs repairs)
{
    public ProposedStep Remedy(Knowledge.Remedy remedy, string place, double cost, double toFinish) => new(
        "remedy", remedy.Id, place, null, remedy.Name + Words.At(network.Model, remedy.Part, place), "", "the likeliest way to put it right for its cost",
        remedy.Minutes, cost, toFinish, new Dictionary<string, string>(), [], [], Cautions(remedy.Cautions, null), remedy.Steps, [], []);

    /// <summary>A state to be brought about because it helps the work that comes next.</summary>
    public ProposedStep Help(SetUpKey key, SetUpValue value, Help help, Knowledge.Remedy remedy, double? toFinish) => new(
        "set-up", key.Id, "engine", null, char.ToUpperInvariant(value.Name[0]) + value.Name[1..], "", $"it helps what comes next, which may fail without it: {remedy.Name}",
        value.Minutes, value.Minutes * costs.PerMinute, toFinish, new Dictionary<string, string> { [key.Id] = value.Id }, [], help.Tools, Cautions(value.Cautions, null), [], [], []);

    public ProposedStep SystemTest(Check test, double toFinish) =>
        Describe(test, "engine", null, Resolve(test), toFinish, "system-test", "see whether the complaint is gone", []);

    /// <summary>Something that is to be shown before the repair counts as proven.</summary>
    public ProposedStep Showing(ProofItem item, Check check, string place, IReadOnlyDictionary<string, string> setUp) =>
        Describe(check, place, null, setUp, null, "proof", $"to prove it: {item.Name}", []);

    public ProposedStep Refer(double toFinish) => new(
        "refer", "", "engine", null, "Hand the job on", "", "nothing here is worth its cost any more",
        null, costs.Refer, toFinish, new Dictionary<string, string>(), [], [], [], [], [], []);

    public ProposedStep Check(Candidate candidate, double toFinish)
    {
        var leads = Leads(candidate);
        var apart = leads.Select(l => l.Leading).OfType<string>().Distinct().Take(3).ToArray();
        var why = apart.Length > 1 ? $"tells apart: {string.Join("; ", apart)}" : "narrows it down at little cost";
        var kind = candidate.With is null ? "check" : "swap";
        return Describe(candidate.Check, candidate.Place, candidate.With, candidate.SetUp, toFinish, kind, why, leads);
    }

    private ProposedStep Describe(
        Check check, string place, string? with, IReadOnlyDictionary<string, string> setUp, double? toFinish, string kind, string why, IReadOnlyList<OutcomeAnswer> leads) => new(
        kind,
        check.Id,
        place,
        with,
        check.Name + Words.At(network.Model, check.At, place) + (with is null ? "" : $" with that{Words.At(with)}"),
        check.Ask,
        why,
        effort.Minutes(check, setUp),
        effort.Minutes(check, setUp) * costs.PerMinute,
        toFinish,
        setUp,
        Changes(setUp),
        check.Tools,
        Cautions([.. check.Cautions, .. SetUpCautions(setUp)], setUp),
        check.Steps,
        check.Number is { } number ? [number.Unit] : [.. check.Choices.Select(c => c.Id)],
        leads)
        {
            Said = setUp.Where(s => network.Model.SetUpKey(s.Key) is { EndsOccasion: true } key && standing.Left.GetValueOrDefault(s.Key, key.Default) != s.Value && !check.SetUp.ContainsKey(s.Key)).ToDictionary(),
            Choices = [.. check.Choices.Select(c => new NamedAnswer(c.Id, c.Name))],
            Number = check.Number is { } form ? new NumberAsked(form.Unit, [.. Units.Like(form.Unit)], form.Low, form.High, form.Open) : null,
            Counted = check.Count is not null,
            Needs = [.. check.Tools.Select(id => new NamedAnswer(id, network.Model.Knowledge.Tools.First(t => t.Id == id).Name))],
        };

    /// <summary>What would lift the interlock that withholds a step: its clearing check, or what it still wants.</summary>
    public ProposedStep MakeSafe(InterlockStatus by, double? toFinish)
    {
        var clearing = by.Missing.Count > 0 ? null : by.Interlock.ClearedBy.Select(e => e.Check).FirstOrDefault(c => c is not null);
        return network.Model.Checks.FirstOrDefault(c => c.Id == clearing) is { } check
            ? Describe(check, "engine", null, Resolve(check), toFinish, "check", $"other steps wait for it. {by.Reason}", [])
            : new ProposedStep(
                "make-safe", by.Interlock.Id, "engine", null, by.Interlock.Instead ?? by.Interlock.Name, "", by.Reason, null, null, toFinish,
                new Dictionary<string, string>(), [], [], [], [.. by.Missing.Select(m => m.Name)], [.. by.Missing.Select(m => m.Id)], [])
            {
                Choices = [.. by.Missing.Select(m => new NamedAnswer(m.Id, m.Name))],
            };
    }

    private Dictionary<string, string> Resolve(Check check) => SetUpResolution.Of(network.Model, check, "engine", standing);

    /// <summary>For each outcome the component that would lead, when it leads clearly more than now.</summary>
    private List<OutcomeAnswer> Leads(Candidate candidate)
    {
        var count = candidate.Outcomes.Names.Count;
        var chances = outcomes.Chances(candidate);
        var answers = new List<OutcomeAnswer>();
        var before = Mass(_ => 1);
        for (var o = 0; o < count; o++)
        {
            var outcome = o;
            var mass = Mass(e => chances[e * count + outcome]);
            var total = Enumerable.Range(0, outcomes.Count).Sum(e => chances[e * count + outcome] * outcomes.Weights[e]);
            var leading = Enumerable.Range(0, mass.Length).MaxBy(c => mass[c] / total - before[c]);
            var name = candidate.Check.Choices.FirstOrDefault(c => c.Id == candidate.Outcomes.Names[o])?.Name ?? candidate.Outcomes.Names[o];
            answers.Add(new OutcomeAnswer(name, total > 0 && mass[leading] / total > before[leading] + 0.02 ? repairs.Name(leading) : null));
        }

        return answers;

        double[] Mass(Func<int, double> weight)
        {
            var mass = new double[repairs.Count];
            for (var e = 0; e < outcomes.Count; e++)
            {
                foreach (var c in outcomes.Needed(e))
                {
                    mass[c] += weight(e) * outcomes.Weights[e];
                }
            }

            return mass;
        }
    }

    /// <summary>What of the engine as it stands is not as the step wants it.</summary>
    private string[] Changes(IReadOnlyDictionary<string, string> setUp)
    {
        var changes = new List<string>();
        foreach (var (name, text) in setUp)
        {
            var at = name.IndexOf('@', StringComparison.Ordinal);
            var key = network.Model.SetUpKey(at < 0 ? name : name[..at]);
            var value = key?.Values.FirstOrDefault(v => v.Id == text);
            if (value is not null && standing.Left.GetValueOrDefault(name, key!.Default) != text)
            {
                changes.Add(value.Name + (at < 0 ? "" : Words.At(name[(at + 1)..])));
            }
        }

        return [.. changes];
    }

    private IEnumerable<string> SetUpCautions(IReadOnlyDictionary<string, string> setUp) => setUp.SelectMany(pair =>
        network.Model.SetUpKey(pair.Key.Split('@')[0])?.Values.FirstOrDefault(v => v.Id == pair.Value)?.Cautions ?? []);

    private CautionAnswer[] Cautions(IEnumerable<string> ids, IReadOnlyDictionary<string, string>? setUp) => [.. ids.Distinct().Select(id =>
        new CautionAnswer(id, network.Model.Knowledge.Cautions.First(c => c.Id == id).Text, StepReply.WasRead(network.Projection, id, setUp)))];
}
