using Undercowl.Diagnosis.Answers;
using Undercowl.Diagnosis.Beliefs;
using Undercowl.Diagnosis.Engine;
using Undercowl.Diagnosis.Graph;
using Undercowl.Diagnosis.History;
using Undercowl.Diagnosis.Safety;
using Undercowl.Jobs;
using Undercowl.Knowledge;
using Undercowl.Planning;

namespace Undercowl.Diagnosis.Planning;

/// <summary>
/// Fills the planner's arrays from the belief and proposes what it ranks, but for what an interlock withholds. Engines are drawn
/// from the posterior, from a fixed seed; draws rank steps and are never shown as belief.
/// </summary>
internal sealed class NextSteps
{
    private const ulong Seed = 20;
    private const int Draws = 2000;

    /// <summary>Numbers that may be touched in looking beyond the next step; a few tens of milliseconds. Estimate.</summary>
    private const long LookAhead = 15_000_000;

    /// <summary>In so many of the engines nothing must be left to mend for showing it to come before mending on, or a remedy help for it to follow at once what it makes safe. Estimate: likelier than not.</summary>
    private const double MostlyGone = 0.5;

    private readonly JobNetwork _network;
    private readonly StandingEngine _standing;
    private readonly Knowledge.Complaint _complaint;
    private readonly Costs _costs;
    private readonly Effort _effort;
    private readonly ForwardRun _run;
    private readonly Candidates _candidates;
    private readonly Repairs _repairs;
    private readonly List<Candidate> _checks;
    private readonly DrawnOutcomes _outcomes;
    private readonly StepDescriptions _words;
    private readonly IReadOnlyList<InterlockStatus> _interlocks;
    private readonly Lazy<HashSet<int>> _read;
    private readonly OpenQuestions _questions;
    private readonly Dictionary<(string Quantity, int Cylinder), double[]> _levelChances = [];
    private readonly ToShow? _toShow;
    private readonly List<(Knowledge.Remedy Remedy, string Place, int[] Parts, InterlockStatus? By)> _actions = [];

    public NextSteps(JobNetwork network, Belief belief, StandingEngine standing, IReadOnlyList<InterlockStatus> interlocks, Knowledge.Complaint complaint)
    {
        (_network, _standing, _complaint, _interlocks) = (network, standing, complaint, interlocks);
        _read = new Lazy<HashSet<int>>(Read);
        _costs = Costs.Of(network.Model, network.Projection);
        _effort = new Effort(network.Model, standing, network.Laid is [.., var last] ? last.Check.Cluster : null, _costs.SameCluster);
        _run = new ForwardRun(network.Graph, belief.Posterior.Sample(Seed, Draws), network.Network.Count);
        _questions = new OpenQuestions(network, _run);
        _candidates = new Candidates(network, standing, interlocks, LevelChances, Differing);
        _repairs = new Repairs(network, _run, complaint, complaint.SetUp);
        _checks = [.. _candidates.Open, .. _candidates.Withheld.Select(w => w.Candidate)];
        _outcomes = new DrawnOutcomes(_run, _repairs, _checks);
        _toShow = network.Projection.Complaints.Any(said => network.Model.Knowledge.Today(said.Id) == complaint.Id && ProofOf.Shown(network, complaint, SetUpResolution.Of(said, complaint)))
            ? new ToShow(network, belief) : null;
        _words = new StepDescriptions(network, standing, _effort, _costs, _outcomes, _repairs);
        foreach (var remedy in network.Model.Remedies)
        {
            foreach (var seat in network.Model.Parts.Where(p => p.Kind.Id == remedy.Part))
            {
                int[] parts = [.. RemedyReach.Seats(network.Model, remedy, seat).Select(s => network.Now.Occupant[s.Index])];
                if (Enumerable.Range(0, _repairs.Count).Any(c => _repairs.Success(remedy, parts, c) > 0))
                {
                    _actions.Add((remedy, seat.Place, parts, interlocks.FirstOrDefault(i => i.Holds(remedy))));
                }
            }
        }
    }

    private Check Test => _network.Model.Knowledge.Checks.First(c => c.Id == _complaint.SystemTest);

    public static StepName Named(ProposedStep step) => new(step.Kind, step.Id, step.Place, step.Name);

    /// <param name="top">So many proposals at most.</param>
    /// <param name="shown">What came first before the doubtful readings that the job ends in.</param>
    public NextAnswer Answer(int top, Shown shown)
    {
        var (open, held) = (_candidates.Open, _candidates.Withheld);
        var ranking = new Planner(new PlannerOptions { LookAhead = LookAhead }).Rank(Problem());
        var proposals = new List<ProposedStep>();
        // Dangers that were found go before everything else, whatever the steps that wait for them are worth.
        foreach (var danger in _interlocks.Where(i => !i.Clear && i.Known && WaitedFor(i) && !_actions.Any(a => a.By is null && i.Holds(a.Remedy.Hazards))))
        {
            proposals.Add(_words.MakeSafe(danger, ranking.Proposals.Count > 0 ? ranking.Proposals[0].ExpectedCostToFinish : 0));

            // What makes it safe and most likely mends it is how that is done.
            if (ranking.Proposals.FirstOrDefault(p => p.Step.Kind == StepKind.Action && p.ProbabilityOfHelp >= MostlyGone && danger.Missing.Count > 0 && danger.Missing.All(m => _actions[p.Step.Index].Remedy.Meets.Contains(m.Id))) is { } mends)
            {
                proposals.Add(Describe(mends, _checks));
            }
        }

        var telling = new MostTellingFirst(_network.Model.Layout, _outcomes, _repairs, _effort);
        List<Proposal> ordered = [.. telling.Order(ranking.Proposals, _checks)];
        // Sniff before power: where the best step waits for the air to be smelt, that is asked before any look.
        var waits = ordered.Count > 0 && Holding(ordered[0], open.Count, held) is not null ? ordered[0] : null;
        ordered = Steady(new FirstThings(_network, _run, _repairs).Order(ordered, _checks, waits is null ? 0 : 1), _checks, shown);
        if (waits is not null && ordered.Remove(waits))
        {
            ordered.Insert(0, waits);
        }

        foreach (var proposal in ordered)
        {
            if (proposals.Count >= top)
            {
                break;
            }

            var step = Holding(proposal, open.Count, held) is { } by ? _words.MakeSafe(by, proposal.ExpectedCostToFinish) : Describe(proposal, _checks);
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

        new Helping(_network, _standing, _interlocks, _costs, _words).PutBefore(
            proposals,
            step => step.Kind == "remedy" ? _actions.FirstOrDefault(a => a.Remedy.Id == step.Id && a.Place == step.Place).Remedy : null,
            remedy => Cost(remedy) + _effort.Minutes(Test, SetUpResolution.Of(_network.Model, Test, "engine", _standing)) * _costs.PerMinute,
            quantity => LevelChances(quantity, 1));
        var toShow = Showing(proposals).ToArray();
        proposals.InsertRange(_toShow is not null && proposals.Count > 0 && !Gone ? 1 : proposals.TakeWhile(p => p.Kind == "make-safe").Count(), toShow);
        proposals.RemoveRange(Math.Min(top, proposals.Count), Math.Max(0, proposals.Count - top));

        return new NextAnswer(
            1,
            proposals,
            _questions.WorthAsking(telling.ToldByDraws),
            [
                .. _candidates.Withheld.Select(w => new NotProposed("check", w.Candidate.Check.Id, w.Candidate.Place, w.Candidate.Check.Name, w.By.Reason)),
                .. _actions.Where(a => a.By is not null).Select(a => new NotProposed("remedy", a.Remedy.Id, a.Place, a.Remedy.Name, a.By!.Reason)),
            ],
            [
                .. _candidates.Unavailable,
                .. _actions.Where(a => Awaited(a.Remedy, a.Place, a.Parts))
                    .Select(a => new NotProposed("remedy", a.Remedy.Id, a.Place, a.Remedy.Name, "done already, and nothing has been read since that would show whether it worked")),
            ],
            [.. _standing.Restore.Select(r => new RestoreAnswer(r.Key, r.What, r.How))],
            _costs.Currency);
    }

    /// <summary>What was shown stays first where little is saved by another, and what was left is not come back to.</summary>
    private List<Proposal> Steady(List<Proposal> ordered, List<Candidate> checks, Shown shown)
    {
        if (shown.Step is not { } step)
        {
            return ordered;
        }

        var first = ordered.Find(p => !shown.Left.Any(l => Is(p, l, checks))) ?? ordered[0];
        var stays = ordered.Find(p => Is(p, step, checks));
        var leads = stays is not null && Steadiness.Stays(stays.ExpectedCostToFinish, first.ExpectedCostToFinish) && !shown.Places.Any(place => IsAt(first, place, checks)) ? stays : first;
        return [leads, .. ordered.Where(p => p != leads)];
    }

    private bool IsAt(Proposal proposal, string place, List<Candidate> checks) => place == proposal.Step.Kind switch
    {
        StepKind.Check => checks[proposal.Step.Index].Place,
        StepKind.Action => _actions[proposal.Step.Index].Place,
        _ => null,
    };

    private bool Is(Proposal proposal, StepName step, List<Candidate> checks) => proposal.Step.Kind switch
    {
        StepKind.Check => checks[proposal.Step.Index] is var c && c.Check.Id == step.Id && (c.Place == step.Place || c.Check.Id == _complaint.SystemTest),
        StepKind.Action => _actions[proposal.Step.Index] is var a && a.Remedy.Id == step.Id && a.Place == step.Place,
        StepKind.SystemTest => _complaint.SystemTest == step.Id,
        _ => step.Id.Length == 0,
    };

    /// <summary>True when in most of the drawn engines nothing is left to mend.</summary>
    private bool Gone => _repairs.Needed.Count(n => n.Length == 0) >= _run.Count * MostlyGone;

    /// <summary>Once the complaint's own test has read good: what else is to be shown, unless it waits for what is proposed already.</summary>
    private IEnumerable<ProposedStep> Showing(List<ProposedStep> proposals)
    {
        foreach (var item in _toShow?.Missing ?? [])
        {
            var (check, place, states) = _toShow!.Next(item, _standing);
            var setUp = SetUpResolution.Of(_network.Model, check, place, _standing, states);
            var hazards = Candidates.Hazards(_network.Model, check, setUp);
            if (_interlocks.FirstOrDefault(i => i.Holds(hazards)) is not { } by)
            {
                yield return _words.Showing(item, check, place, setUp);
            }
            else if (!proposals.Any(p => p.Kind == "make-safe" && p.Id == by.Interlock.Id))
            {
                yield return _words.MakeSafe(by, null);
                yield break;
            }
        }
    }

    private bool WaitedFor(InterlockStatus interlock) =>
        _candidates.Withheld.Any(w => interlock.Holds(Candidates.Hazards(_network.Model, w.Candidate.Check, w.Candidate.SetUp)))
        || _actions.Any(a => interlock.Holds(a.Remedy.Hazards));

    private InterlockStatus? Holding(Proposal proposal, int open, List<(Candidate Candidate, InterlockStatus By)> held) => proposal.Step.Kind switch
    {
        StepKind.Check when proposal.Step.Index >= open => held[proposal.Step.Index - open].By,
        StepKind.Action => _actions[proposal.Step.Index].By,
        StepKind.SystemTest => _candidates.Withheld.FirstOrDefault(w => w.Candidate.Check.Id == _complaint.SystemTest).By,
        _ => null,
    };

    private ProposedStep Describe(Proposal proposal, List<Candidate> checks) => proposal.Step.Kind switch
    {
        // The complaint's own test is worth its reading too, and is one step however it came to be ranked.
        StepKind.Check when checks[proposal.Step.Index].Check.Id == _complaint.SystemTest => _words.SystemTest(Test, proposal.ExpectedCostToFinish),
        StepKind.Check => _words.Check(checks[proposal.Step.Index], proposal.ExpectedCostToFinish),
        StepKind.Action => _words.Remedy(_actions[proposal.Step.Index].Remedy, _actions[proposal.Step.Index].Place, Cost(_actions[proposal.Step.Index].Remedy), proposal.ExpectedCostToFinish),
        StepKind.SystemTest => _words.SystemTest(Test, proposal.ExpectedCostToFinish),
        _ => _words.Refer(proposal.ExpectedCostToFinish),
    };

    private double[] LevelChances(string quantity, int cylinder)
    {
        if (_levelChances.TryGetValue((quantity, cylinder), out var worked))
        {
            return worked;
        }

        var known = _network.Model.Quantity(quantity);
        var signal = _network.Laying.Copies(_network.Now, _standing.Left).Of(quantity, known.Per == QuantityScope.Engine ? 0 : cylinder);
        _run.Extend();
        var chances = new double[known.Levels.Count];
        for (var d = 0; d < _run.Count; d++)
        {
            chances[_run.Level(d, signal)] += 1.0 / _run.Count;
        }

        return _levelChances[(quantity, cylinder)] = chances;
    }

    /// <summary>Share of the drawn engines in which two signals have not the same level.</summary>
    private double Differing(Signal one, Signal other)
    {
        _run.Extend();
        var count = 0;
        for (var d = 0; d < _run.Count; d++)
        {
            count += _run.Level(d, one) == _run.Level(d, other) ? 0 : 1;
        }

        return count / (double)_run.Count;
    }

    private TroubleshootingProblem Problem()
    {
        var components = _repairs.Count;
        var broken = new bool[_outcomes.Count * components];
        for (var e = 0; e < _outcomes.Count; e++)
        {
            foreach (var c in _outcomes.Needed(e))
            {
                broken[e * components + c] = true;
            }
        }

        var success = new double[_actions.Count * components];
        for (var a = 0; a < _actions.Count; a++)
        {
            for (var c = 0; c < components; c++)
            {
                success[a * components + c] = _repairs.Success(_actions[a].Remedy, _actions[a].Parts, c);
            }
        }

        return new TroubleshootingProblem(
            new HypothesisTable { Weights = _outcomes.Weights, Components = components, Broken = broken },
            new ActionTable
            {
                Cost = [.. _actions.Select(a => Cost(a.Remedy))],
                Success = success,
                Allowed = [.. _actions.Select(a => !Declined(a.Remedy.Id, a.Place) && !Awaited(a.Remedy, a.Place, a.Parts))],
            },
            new CheckTable
            {
                Cost = [.. _checks.Select(c => _effort.Minutes(c.Check, c.SetUp) * _costs.PerMinute)],
                Outcomes = [.. _checks.Select(c => c.Outcomes.Names.Count)],
                OutcomeProbability = _outcomes.All(_checks),
            },
            ClusterTable.None,
            _effort.Minutes(Test, SetUpResolution.Of(_network.Model, Test, "engine", _standing)) * _costs.PerMinute,
            _costs.Refer);
    }

    private double Cost(Knowledge.Remedy remedy) => remedy.Minutes * _costs.PerMinute + remedy.Parts;

    /// <summary>Done already, and no reading since depends on what it changed.</summary>
    private bool Awaited(Knowledge.Remedy remedy, string place, int[] parts) =>
        _network.Projection.All<Jobs.Remedy>().Any(r => _network.Model.Knowledge.Today(r.Body.Action) == remedy.Id && r.Body.Place.Text == place)
        && !parts.SelectMany(p => _network.Model.AspectsOf[p]).Where(a => remedy.Replaces || RemedyReach.Touches(remedy, a))
            .Select(a => _network.Conditions.NodeOf(_network.Now, a)).Any(_read.Value.Contains);

    /// <summary>The readings' nodes and all that they follow from.</summary>
    private HashSet<int> Read()
    {
        var read = new HashSet<int>();
        var left = new Stack<int>(_network.Laid.Select(l => l.Signal).Where(s => !s.IsConstant).Select(s => s.Node));
        while (left.TryPop(out var node))
        {
            if (read.Add(node))
            {
                foreach (var parent in _network.Graph[node].Parents)
                {
                    left.Push(parent);
                }
            }
        }

        return read;
    }

    private bool Declined(string what, string place) => _network.Projection.All<Declined>().Any(d =>
        _network.Model.Knowledge.Today(d.Body.What) == what && (d.Body.Place is not { } at || at.Text == place));
}
