using Undercowl.Diagnosis.Engine;
using Undercowl.Diagnosis.Graph;
using Undercowl.Diagnosis.History;
using Undercowl.Diagnosis.Readings;
using Undercowl.Inference;
using Undercowl.Jobs;

namespace Undercowl.Diagnosis;

/// <summary>
/// The network of one job: the layout's conditions, the quantities in the set-ups that the findings were taken in, and the
/// findings as likelihoods. Built afresh for a job; it answers nothing by itself.
/// </summary>
internal sealed class JobNetwork
{
    public const string ComplaintLabel = "complaint";

    /// <summary>Chance that a reading was written down although its set-up was not reached. Estimate.</summary>
    private const double NotReached = 0.01;

    private readonly List<(Signal Signal, double[] PerLevel, string Label)> _complaints = [];
    private readonly List<ReachedSetUp> _reached = [];
    private readonly (string Quantity, IReadOnlyDictionary<string, string> SetUp)? _ask;

    /// <param name="model">The layout with the knowledge over it.</param>
    /// <param name="projection">The job.</param>
    /// <param name="ask">A quantity of the whole engine to carry along as it is now, all faults that come and go showing.</param>
    /// <param name="untied">True: no common cause ties what it bears on, so that the sums are smaller.</param>
    public JobNetwork(EngineModel model, Projection projection, (string Quantity, IReadOnlyDictionary<string, string> SetUp)? ask = null, bool untied = false)
    {
        (Model, Projection) = (model, projection);
        Graph = new NodeGraph();
        CommonCauses = [.. SpokenOf.In(model, projection).Select(c => c with { Ties = c.Ties && !untied })];
        Conditions = new ConditionNodes(model, Graph, [.. CommonCauses.Where(c => c.Ties).Select(c => c.Cause)]);
        Laying = new Laying(Conditions, projection);
        History = new EngineHistory(Conditions, projection);
        foreach (var aspect in model.Aspects)
        {
            Conditions.First(aspect);
        }

        LayComplaints();
        Interview = new Interview(Conditions, projection, Laying);
        Answers = [.. Interview.Answers()];
        var laid = new List<LaidFinding>();
        var idle = new List<IdleFinding>();
        foreach (var finding in projection.Findings)
        {
            if (Laying.Lay(finding, History.Before(finding), out var why) is { } found)
            {
                laid.Add(found);
                LayReached(found, History.Before(finding));
            }
            else
            {
                idle.Add(new IdleFinding(finding.Id, finding.Body.Check, finding.Body.Place, why));
            }
        }

        (Laid, WithoutEffect) = (laid, idle);
        Results = [.. new Results(Conditions, projection, History, Laying).Laid()];
        Now = History.Now;
        _ask = ask;
        Asked = ask is { } asked ? Laying.Copies(Now, asked.SetUp, provoked: true).Of(asked.Quantity, 0) : Signal.Constant(0);
        Network = ToNetwork();
        Options = EliminationOptions.Default with
        {
            Order = EliminationOrder.WeightedFill,
            Stages = [.. Graph.Gathered.Select(nodes => nodes.ToArray())],
        };
    }

    public EngineModel Model { get; }

    public Projection Projection { get; }

    /// <summary>What was complained of, in the set-ups in which it shows.</summary>
    public IEnumerable<Signal> ComplaintSignals => _complaints.Select(c => c.Signal);

    /// <summary>Grows further when candidates for the next step are laid; <see cref="Network"/> does not.</summary>
    public NodeGraph Graph { get; }

    public ConditionNodes Conditions { get; }

    public Laying Laying { get; }

    public EngineHistory History { get; }

    public IReadOnlyList<LaidFinding> Laid { get; }

    /// <summary>Findings that name what today's knowledge does not know.</summary>
    public IReadOnlyList<IdleFinding> WithoutEffect { get; }

    /// <summary>How the common causes stand in this job.</summary>
    public IReadOnlyList<Heard> CommonCauses { get; }

    /// <summary>The questions of the interview.</summary>
    public Interview Interview { get; }

    /// <summary>What was answered in it, as far as it tells something.</summary>
    public IReadOnlyList<LaidAnswer> Answers { get; }

    /// <summary>What came of remedies, as far as it was said.</summary>
    public IReadOnlyList<LaidResult> Results { get; }

    /// <summary>What the findings' set-ups tell by having been reached.</summary>
    public IReadOnlyList<ReachedSetUp> Reached => _reached;

    /// <summary>What the constructor was asked to carry along.</summary>
    public Signal Asked { get; }

    /// <summary>The engine after all deeds.</summary>
    public EngineState Now { get; }

    /// <summary>Node numbers are those of <see cref="Graph"/>.</summary>
    public Network Network { get; }

    /// <summary>How the posterior is computed.</summary>
    public EliminationOptions Options { get; }

    /// <summary>The same job without ties between what a common cause bears on; null when there are none.</summary>
    public JobNetwork? Untied() => CommonCauses.Any(c => c.Ties) ? new JobNetwork(Model, Projection, _ask, untied: true) : null;

    /// <summary>The nodes whose posterior is the belief: each aspect as found and now, and what befell the engine.</summary>
    public int[] Wanted() =>
    [
        .. Model.Aspects.SelectMany(a => new[] { Conditions.First(a), Conditions.NodeOf(Now, a) })
            .Concat(CommonCauses.Where(c => c.Ties).Select(c => Conditions.Befell(c.Cause)))
            .Concat(Asked.IsConstant ? [] : [Asked.Node]).Distinct(),
    ];

    /// <summary>Whether this quantity in this set-up is what the network carries along.</summary>
    public bool Asks(string quantity, IReadOnlyDictionary<string, string> setUp) =>
        _ask is { } ask && ask.Quantity == quantity && ask.SetUp.Count == setUp.Count && ask.SetUp.All(s => setUp.GetValueOrDefault(s.Key) == s.Value);

    /// <summary>The complaints, and the answers, findings and results whose label <paramref name="keep"/> admits, as likelihoods.</summary>
    public Evidence Evidence(Func<string, bool>? keep = null, bool complaints = true)
    {
        var evidence = new Evidence(Network);
        foreach (var (signal, perLevel, label) in complaints ? _complaints : [])
        {
            Add(evidence, signal, perLevel, -1, [], label);
        }

        LaidAnswer[] answers = [.. Answers.Where(a => keep?.Invoke(a.Label) ?? true)];
        foreach (var (node, likelihood, label) in HeardApart.Of(Conditions, [.. CommonCauses.Where(c => !c.Ties).Select(c => c.Cause)], answers.Select(a => a.Given)))
        {
            evidence.Likelihood(node, likelihood, label);
        }

        foreach (var answer in answers)
        {
            foreach (var (nodes, likelihood) in answer.Told)
            {
                evidence.Likelihood(nodes, likelihood, answer.Label);
            }
        }

        foreach (var company in Laid.Where(l => keep?.Invoke(l.Label) ?? true).GroupBy(l => l.Company))
        {
            var first = company.First();
            var group = new ReadingGroup(first.Check, first.Levels, first.Doubt, [.. company.Select(l => l.Reading)], first.Kilovolts);
            if (ReadingLikelihood.Of(group) is { } perLevel)
            {
                Add(evidence, first.Signal, perLevel, first.Tool, first.ToolReadsWorst, first.Label);
            }
        }

        foreach (var result in Results.Where(r => keep?.Invoke(r.Label) ?? true))
        {
            foreach (var (signal, perLevel) in result.Told)
            {
                Add(evidence, signal, perLevel, -1, [], result.Label);
            }
        }

        // Reached is reached, however often and whatever was read there: of several set-ups the one that asks most.
        foreach (var same in _reached.Where(r => keep?.Invoke(r.By.Label) ?? true).GroupBy(r => (r.Signal.Node, string.Join(',', r.Signal.Map))))
        {
            var first = same.First();
            double[] perLevel = [.. first.PerLevel.Select((_, level) => same.Min(r => r.PerLevel[level]))];
            Add(evidence, first.Signal, perLevel, -1, [], first.By.Label);
        }

        return evidence;
    }

    /// <summary>A reading that was taken tells that its set-up could be reached: who read it while cranking has an engine that cranks.</summary>
    private void LayReached(LaidFinding found, EngineState state)
    {
        if (found.Finding.Body.Value is NotDoneReading)
        {
            return;
        }

        foreach (var (name, text) in found.Finding.Body.SetUp)
        {
            foreach (var (id, levels) in Model.SetUpKey(name)?.Values.FirstOrDefault(v => v.Id == text)?.Impossible ?? [])
            {
                var quantity = Model.Quantity(id);
                var signal = Laying.Copies(state, found.Finding.Body.SetUp).Of(id, 0);
                _reached.Add(new ReachedSetUp(id, signal, [.. quantity.Levels.Select(l => levels.Contains(l) ? NotReached : 1)], found));
            }
        }
    }

    private static void Add(Evidence evidence, Signal signal, double[] perLevel, int tool, bool[] worst, string label)
    {
        if (tool < 0)
        {
            if (!signal.IsConstant)
            {
                evidence.Likelihood(signal.Node, Array.ConvertAll(signal.Map, level => perLevel[level]), label);
            }

            return;
        }

        if (signal.IsConstant)
        {
            evidence.Likelihood(tool, Array.ConvertAll(worst, bad => perLevel[bad ? ^1 : signal.Level]), label);
            return;
        }

        var joint = new double[signal.Map.Length * worst.Length];
        for (var s = 0; s < signal.Map.Length; s++)
        {
            for (var t = 0; t < worst.Length; t++)
            {
                joint[s * worst.Length + t] = perLevel[worst[t] ? ^1 : signal.Map[s]];
            }
        }

        evidence.Likelihood([signal.Node, tool], joint, label);
    }

    private void LayComplaints()
    {
        foreach (var said in Projection.Complaints)
        {
            var complaint = Model.Knowledge.ComplaintOf(said.Id);
            if (complaint is null)
            {
                continue;
            }

            var quantity = Model.Quantity(complaint.Quantity);
            var signal = Laying.Copies(Conditions.AsFound, SetUpResolution.Of(said, complaint)).Of(quantity.Id, 0);
            _complaints.Add((signal, [.. quantity.Levels.Select(l => complaint.Given[l])], ComplaintLabel));
            foreach (var (i, besides) in complaint.Also.Index())
            {
                var read = Model.Quantity(besides.Quantity);
                _complaints.Add((
                    Laying.Copies(History.AnotherMoment(i), besides.SetUp).Of(read.Id, read.Per == Knowledge.QuantityScope.Engine ? 0 : 1), [.. read.Levels.Select(l => besides.Given[l])], ComplaintLabel));
            }
        }
    }

    private Network ToNetwork()
    {
        var builder = new NetworkBuilder();
        for (var n = 0; n < Graph.Count; n++)
        {
            var node = Graph[n];
            _ = node.Chance is { } table
                ? builder.Add(node.Name, node.States, node.Parents, table)
                : builder.AddFunction(node.Name, node.States, node.Parents, node.Function!);
        }

        return builder.Build();
    }
}
