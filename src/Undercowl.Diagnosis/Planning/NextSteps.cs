using Undercowl.Diagnosis.Answers;
using Undercowl.Diagnosis.Beliefs;
using Undercowl.Diagnosis.History;
using Undercowl.Diagnosis.Safety;
using Undercowl.Jobs;
using Undercowl.Knowledge;
using Undercowl.Planning;

namespace Undercowl.Diagnosis.Planning;

/// <summary>
/// Fills the planner's arrays from the belief and puts its ranking into words. Engines are drawn from the exact posterior,
/// from a fixed seed; draws rank steps and are never shown as belief.
/// </summary>
internal sealed class NextSteps
{
    private const ulong Seed = 20;
    private const int Draws = 2000;

    /// <summary>Expected costs within this ratio of one another are equal for all that the draws can tell. Estimate.</summary>
    private const double SameCost = 1.01;

    /// <summary>A check that tells at least this part of what another tells is as good. Estimate.</summary>
    private const double AsTelling = 0.9;

    /// <summary>A check that tells fewer bits than this of what must be mended does not go before a remedy as good. Estimate.</summary>
    private const double WorthAsking = 0.15;

    /// <summary>What is drawn in a smaller part of the engines says nothing for itself. Estimate.</summary>
    private const double SeldomDrawn = 0.01;

    private readonly JobNetwork _network;
    private readonly StandingEngine _standing;
    private readonly Knowledge.Complaint _complaint;
    private readonly Costs _costs;
    private readonly Effort _effort;
    private readonly ForwardRun _run;
    private readonly Candidates _candidates;
    private readonly Repairs _repairs;
    private readonly Dictionary<Candidate, double[]> _chances = new(ReferenceEqualityComparer.Instance);
    private readonly List<(Knowledge.Remedy Remedy, string Place, int Part)> _actions = [];

    public NextSteps(JobNetwork network, Belief belief, StandingEngine standing, IReadOnlyList<InterlockStatus> interlocks, Knowledge.Complaint complaint)
    {
        (_network, _standing, _complaint) = (network, standing, complaint);
        _costs = Costs.Of(network.Model, network.Projection);
        _effort = new Effort(network.Model, standing, network.Laid is [.., var last] ? last.Check.Cluster : null, _costs.SameCluster);
        _run = new ForwardRun(network.Graph, belief.Posterior.Sample(Seed, Draws), network.Network.Count);
        _candidates = new Candidates(network, standing, interlocks, LevelChances);
        _repairs = new Repairs(network, _run, complaint, complaint.SetUp);
        foreach (var remedy in network.Model.Remedies)
        {
            foreach (var seat in network.Model.Parts.Where(p => p.Kind.Id == remedy.Part))
            {
                var part = network.Now.Occupant[seat.Index];
                if (Enumerable.Range(0, _repairs.Count).Any(c => _repairs.Success(remedy, part, c) > 0))
                {
                    _actions.Add((remedy, seat.Place, part));
                }
            }
        }
    }

    public NextAnswer Answer(int top)
    {
        var open = _candidates.Open.Where(c => c.Check.Id != _complaint.SystemTest).ToList();
        var held = _candidates.Withheld.Where(w => w.Candidate.Check.Id != _complaint.SystemTest).ToList();
        List<Candidate> all = [.. open, .. held.Select(w => w.Candidate)];
        var ranking = new Planner(new PlannerOptions { Foresight = true }).Rank(Problem(all));
        var proposals = new List<ProposedStep>();
        foreach (var proposal in MostTellingFirst(ranking.Proposals, all))
        {
            if (proposals.Count >= top)
            {
                break;
            }

            var step = Describe(proposal, all);
            if (Holding(proposal, open.Count, held) is { } by)
            {
                step = MakeSafe(by, step);
            }

            // One check at one place is enough of a proposal; the same at other places follows from its answer.
            if (!proposals.Any(p => p.Kind == step.Kind && p.Id == step.Id && (p.Place == step.Place || step.Kind != "remedy")))
            {
                proposals.Add(step);
            }

            if (step.Kind == "refer")
            {
                break;
            }
        }

        return new NextAnswer(
            1,
            proposals,
            [.. _candidates.Withheld.Select(w => new NotProposed("check", w.Candidate.Check.Id, w.Candidate.Place, w.Candidate.Check.Name, w.By.Reason))],
            _candidates.Unavailable,
            [.. _standing.Restore.Select(r => new RestoreAnswer(r.Key, r.What, r.How))],
            _costs.Currency);
    }

    /// <summary>
    /// By cost; of checks that cost the same to within what draws can tell, the one first that tells most for its own cost. The
    /// best remedy comes second if it costs no more than that, and gives way even where it costs a trifle less: asking spoils
    /// nothing, and the choice is between asking and mending, not among ways of asking.
    /// </summary>
    private IEnumerable<Proposal> MostTellingFirst(IReadOnlyList<Proposal> ranked, List<Candidate> checks)
    {
        var left = ranked.ToList();
        var asGood = ranked.Count == 0 ? 0 : ranked[0].ExpectedCostToFinish * SameCost;
        var ends = Ends();
        var told = new Dictionary<int, double>();
        if (ranked is [{ Step.Kind: StepKind.Action } mend, ..] && MostTelling(p => p.ExpectedCostToFinish <= asGood && Bits(p.Step.Index) >= WorthAsking) is { } ask)
        {
            left.Remove(ask);
            left.Remove(mend);
            yield return ask;
            yield return mend;
        }

        while (left.Count > 0)
        {
            var best = left[0];
            if (best.Step.Kind == StepKind.Check)
            {
                best = MostTelling(p => p.ExpectedCostToFinish <= best.ExpectedCostToFinish * SameCost)!;
            }

            left.Remove(best);
            yield return best;
            if (left.Count == ranked.Count - 1 && left.Find(p => p.Step.Kind == StepKind.Action) is { } remedy && remedy.ExpectedCostToFinish <= asGood)
            {
                left.Remove(remedy);
                yield return remedy;
            }
        }

        Proposal? MostTelling(Func<Proposal, bool> such)
        {
            var equal = left.Where(p => p.Step.Kind == StepKind.Check && such(p)).ToArray();
            if (equal.MaxBy(p => BitsPerMinute(p.Step.Index)) is not { } most)
            {
                return null;
            }

            // Where one check tells as much at several places, the first place is as good as any.
            return equal
                .Where(p => checks[p.Step.Index].Check == checks[most.Step.Index].Check && BitsPerMinute(p.Step.Index) >= AsTelling * BitsPerMinute(most.Step.Index))
                .MinBy(p => p.Step.Index);
        }

        double BitsPerMinute(int check) => Bits(check) / _effort.Minutes(checks[check].Check, checks[check].SetUp);

        double Bits(int check) => told.TryGetValue(check, out var known) ? known : told[check] = Told(checks[check], ends);
    }

    /// <summary>
    /// For each drawn engine the number of what must be mended; engines in which the same must be mended share one. What was
    /// drawn a few times only is one among the rest, 0: of single draws any check seems to tell something.
    /// </summary>
    private int[] Ends()
    {
        var needed = _repairs.Needed.Select(n => string.Join(',', n)).ToArray();
        var numbers = needed.CountBy(n => n).Where(c => c.Value >= SeldomDrawn * _run.Count).Select((c, i) => (c.Key, Number: i + 1)).ToDictionary(c => c.Key, c => c.Number);
        return Array.ConvertAll(needed, n => numbers.GetValueOrDefault(n));
    }

    /// <summary>Bits that the answer of a check tells of what must be mended.</summary>
    private double Told(Candidate candidate, int[] ends)
    {
        var outcomes = candidate.Outcomes.Names.Count;
        var joint = new double[(ends.Max() + 1) * outcomes];
        var chances = OutcomeChances(candidate);
        for (var i = 0; i < chances.Length; i++)
        {
            joint[ends[i / outcomes] * outcomes + i % outcomes] += chances[i] / _run.Count;
        }

        var answers = new double[outcomes];
        var mended = new double[joint.Length / outcomes];
        for (var i = 0; i < joint.Length; i++)
        {
            answers[i % outcomes] += joint[i];
            mended[i / outcomes] += joint[i];
        }

        return Math.Max(0, Spread(answers) + Spread(mended) - Spread(joint));

        static double Spread(double[] chances) => -chances.Sum(p => p > 0 ? p * Math.Log2(p) : 0);
    }

    private InterlockStatus? Holding(Proposal proposal, int open, List<(Candidate Candidate, InterlockStatus By)> held) => proposal.Step.Kind switch
    {
        StepKind.Check when proposal.Step.Index >= open => held[proposal.Step.Index - open].By,
        StepKind.SystemTest => _candidates.Withheld.FirstOrDefault(w => w.Candidate.Check.Id == _complaint.SystemTest).By,
        _ => null,
    };

    private double[] LevelChances(string quantity, int cylinder)
    {
        var known = _network.Model.Quantity(quantity);
        var signal = _network.Laying.Copies(_network.Now, _standing.Left).Of(quantity, known.Per == QuantityScope.Engine ? 0 : cylinder);
        _run.Extend();
        var chances = new double[known.Levels.Count];
        for (var d = 0; d < _run.Count; d++)
        {
            chances[_run.Level(d, signal)] += 1.0 / _run.Count;
        }

        return chances;
    }

    private TroubleshootingProblem Problem(List<Candidate> checks)
    {
        _run.Extend();
        var draws = _run.Count;
        var components = _repairs.Count;
        var weights = new double[draws];
        var broken = new bool[draws * components];
        for (var d = 0; d < draws; d++)
        {
            weights[d] = 1.0 / draws;
            foreach (var c in _repairs.Needed[d])
            {
                broken[d * components + c] = true;
            }
        }

        var success = new double[_actions.Count * components];
        for (var a = 0; a < _actions.Count; a++)
        {
            for (var c = 0; c < components; c++)
            {
                success[a * components + c] = _repairs.Success(_actions[a].Remedy, _actions[a].Part, c);
            }
        }

        var test = _network.Model.Knowledge.Checks.First(c => c.Id == _complaint.SystemTest);
        return new TroubleshootingProblem(
            new HypothesisTable { Weights = weights, Components = components, Broken = broken },
            new ActionTable
            {
                Cost = [.. _actions.Select(a => Cost(a.Remedy))],
                Success = success,
                Allowed = [.. _actions.Select(a => !Declined(a.Remedy.Id, a.Place))],
            },
            new CheckTable
            {
                Cost = [.. checks.Select(c => _effort.Minutes(c.Check, c.SetUp) * _costs.PerMinute)],
                Outcomes = [.. checks.Select(c => c.Outcomes.Names.Count)],
                OutcomeProbability = AllChances(checks),
            },
            ClusterTable.None,
            _effort.Minutes(test, Resolve(test, "engine")) * _costs.PerMinute,
            _costs.Refer);
    }

    private double[] AllChances(List<Candidate> checks)
    {
        var all = new double[checks.Sum(c => OutcomeChances(c).Length)];
        var start = 0;
        foreach (var check in checks)
        {
            OutcomeChances(check).CopyTo(all, start);
            start += OutcomeChances(check).Length;
        }

        return all;
    }

    /// <summary>Chance of each outcome in each drawn engine, outcomes fastest.</summary>
    private double[] OutcomeChances(Candidate candidate)
    {
        if (_chances.TryGetValue(candidate, out var known))
        {
            return known;
        }

        var outcomes = candidate.Outcomes.Names.Count;
        var chances = new double[_run.Count * outcomes];
        for (var d = 0; d < _run.Count; d++)
        {
            var lost = candidate.Tool >= 0 && candidate.ToolReadsWorst[_run.State(d, candidate.Tool)];
            candidate.Outcomes.Rows[lost ? ^1 : _run.Level(d, candidate.Signal)].CopyTo(chances, d * outcomes);
        }

        return _chances[candidate] = chances;
    }

    private double Cost(Knowledge.Remedy remedy) => remedy.Minutes * _costs.PerMinute + remedy.Parts;

    private bool Declined(string what, string place) => _network.Projection.All<Declined>().Any(d =>
        d.Body.What == what && (d.Body.Place is not { } at || at.Text == place));

    private ProposedStep Describe(Proposal proposal, List<Candidate> checks)
    {
        switch (proposal.Step.Kind)
        {
            case StepKind.Check:
                return DescribeCheck(checks[proposal.Step.Index], proposal);
            case StepKind.Action:
                var (remedy, place, _) = _actions[proposal.Step.Index];
                return new ProposedStep(
                    "remedy", remedy.Id, place, null, remedy.Name + Words.At(_network.Model, remedy.Part, place), "", "the likeliest way to put it right for its cost",
                    remedy.Minutes, Cost(remedy), proposal.ExpectedCostToFinish, new Dictionary<string, string>(), [], [],
                    Cautions(remedy.Cautions, null), remedy.Steps, [], []);
            case StepKind.SystemTest:
                var test = _network.Model.Knowledge.Checks.First(c => c.Id == _complaint.SystemTest);
                return DescribeCheck(test, "engine", null, Resolve(test, "engine"), proposal, "system-test", "see whether the complaint is gone", []);
            default:
                return new ProposedStep(
                    "refer", "", "engine", null, "Hand the job on", "", "nothing here is worth its cost any more",
                    0, _costs.Refer, proposal.ExpectedCostToFinish, new Dictionary<string, string>(), [], [], [], [], [], []);
        }
    }

    private ProposedStep DescribeCheck(Candidate candidate, Proposal proposal)
    {
        var leads = Leads(candidate);
        var apart = leads.Select(l => l.Leading).OfType<string>().Distinct().Take(3).ToArray();
        var why = apart.Length > 1 ? $"tells apart: {string.Join("; ", apart)}" : "narrows it down at little cost";
        var kind = candidate.With is null ? "check" : "swap";
        return DescribeCheck(candidate.Check, candidate.Place, candidate.With, candidate.SetUp, proposal, kind, why, leads);
    }

    private ProposedStep DescribeCheck(
        Check check, string place, string? with, IReadOnlyDictionary<string, string> setUp, Proposal? proposal, string kind, string why, IReadOnlyList<OutcomeAnswer> leads) => new(
        kind,
        check.Id,
        place,
        with,
        check.Name + Words.At(_network.Model, check.At, place) + (with is null ? "" : $" with that{Words.At(with)}"),
        check.Ask,
        why,
        _effort.Minutes(check, setUp),
        _effort.Minutes(check, setUp) * _costs.PerMinute,
        proposal?.ExpectedCostToFinish ?? 0,
        setUp,
        Changes(setUp),
        check.Tools,
        Cautions([.. check.Cautions, .. SetUpCautions(setUp)], setUp),
        check.Steps,
        check.Number is { } number ? [number.Unit] : [.. check.Choices.Select(c => c.Id)],
        leads);

    /// <summary>What would lift the interlock that withholds a step: its clearing check, or what it still wants.</summary>
    private ProposedStep MakeSafe(InterlockStatus by, ProposedStep step)
    {
        var clearing = by.Missing.Count > 0 ? null : by.Interlock.ClearedBy.Select(e => e.Check).FirstOrDefault(c => c is not null);
        var check = _network.Model.Checks.FirstOrDefault(c => c.Id == clearing);
        if (check is not null)
        {
            return DescribeCheck(check, "engine", null, Resolve(check, "engine"), null, "check", $"other steps wait for it. {by.Reason}", []) with
            {
                ExpectedCostToFinish = step.ExpectedCostToFinish,
            };
        }

        return new ProposedStep(
            "make-safe", by.Interlock.Id, "engine", null, by.Interlock.Instead ?? by.Interlock.Name, "", by.Reason, 0, 0, step.ExpectedCostToFinish,
            new Dictionary<string, string>(), [], [], [], [.. by.Missing.Select(m => m.Name)], [.. by.Missing.Select(m => m.Id)], []);
    }

    private Dictionary<string, string> Resolve(Check check, string place) => SetUpResolution.Of(_network.Model, check, place, _standing);

    /// <summary>For each outcome the component that would lead, when it leads clearly more than now.</summary>
    private List<OutcomeAnswer> Leads(Candidate candidate)
    {
        var outcomes = candidate.Outcomes.Names.Count;
        var chances = OutcomeChances(candidate);
        var answers = new List<OutcomeAnswer>();
        var before = Mass(_ => 1);
        for (var o = 0; o < outcomes; o++)
        {
            var outcome = o;
            var mass = Mass(d => chances[d * outcomes + outcome]);
            var total = Enumerable.Range(0, _run.Count).Sum(d => chances[d * outcomes + outcome]) / _run.Count;
            var leading = Enumerable.Range(0, mass.Length).MaxBy(c => mass[c] / total - before[c]);
            var name = candidate.Check.Choices.FirstOrDefault(c => c.Id == candidate.Outcomes.Names[o])?.Name ?? candidate.Outcomes.Names[o];
            answers.Add(new OutcomeAnswer(name, total > 0 && mass[leading] / total > before[leading] + 0.02 ? _repairs.Name(leading) : null));
        }

        return answers;

        double[] Mass(Func<int, double> weight)
        {
            var mass = new double[_repairs.Count];
            for (var d = 0; d < _run.Count; d++)
            {
                foreach (var c in _repairs.Needed[d])
                {
                    mass[c] += weight(d) / _run.Count;
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
            var key = _network.Model.SetUpKey(at < 0 ? name : name[..at]);
            var value = key?.Values.FirstOrDefault(v => v.Id == text);
            if (value is not null && _standing.Left.GetValueOrDefault(name, key!.Default) != text)
            {
                changes.Add(value.Name + (at < 0 ? "" : Words.At(name[(at + 1)..])));
            }
        }

        return [.. changes];
    }

    private IEnumerable<string> SetUpCautions(IReadOnlyDictionary<string, string> setUp) => setUp.SelectMany(pair =>
        _network.Model.SetUpKey(pair.Key.Split('@')[0])?.Values.FirstOrDefault(v => v.Id == pair.Value)?.Cautions ?? []);

    private CautionAnswer[] Cautions(IEnumerable<string> ids, IReadOnlyDictionary<string, string>? setUp) => [.. ids.Distinct().Select(id =>
    {
        var acknowledged = _network.Projection.All<CautionAcknowledged>().Any(a =>
            a.Body.Caution == id && (a.Body.SetUp is null || setUp is null || Same(a.Body.SetUp, setUp)));
        return new CautionAnswer(id, _network.Model.Knowledge.Cautions.First(c => c.Id == id).Text, acknowledged);
    })];

    private static bool Same(IReadOnlyDictionary<string, string> a, IReadOnlyDictionary<string, string> b) =>
        a.All(pair => b.GetValueOrDefault(pair.Key) == pair.Value);
}
