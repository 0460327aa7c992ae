using System.Runtime.InteropServices;
using Undercowl.Diagnosis.Engine;
using Undercowl.Diagnosis.History;
using Undercowl.Knowledge;

namespace Undercowl.Diagnosis.Graph;

/// <summary>
/// The chance nodes: conditions as found, after remedies, in a new occasion; what comes and goes; parts known to be good;
/// tools. Each is made once.
/// </summary>
/// <param name="model">The engine.</param>
/// <param name="graph">Where the nodes go.</param>
/// <param name="tied">The common causes that tie what they bear on.</param>
internal sealed class ConditionNodes(EngineModel model, NodeGraph graph, IReadOnlyCollection<CommonCause> tied)
{
    private static readonly string[] Hidden = ["quiet", "showing"];
    private static readonly string[] Befallen = ["no", "yes"];
    private static readonly string[] Substitute = [AspectInstance.Sound, "unsound"];

    private readonly Dictionary<string, int> _made = new(StringComparer.Ordinal);
    private readonly List<(int Node, AspectInstance Aspect)> _versions = [];
    private readonly HashSet<int> _underWay = [];

    public NodeGraph Graph => graph;

    public EngineModel Model => model;

    /// <summary>All version nodes made so far.</summary>
    public IReadOnlyList<(int Node, AspectInstance Aspect)> Versions => _versions;

    /// <summary>The engine as it came in.</summary>
    public EngineState AsFound => field ??= new EngineState(
        NodeGraph.Identity(model.Parts.Length),
        new Dictionary<(int, int), int>(),
        Array.ConvertAll(model.Aspects, _ => -1),
        Array.ConvertAll(model.Parts, _ => EngineState.Opening));

    /// <summary>The node of an aspect's version: as found when none was made since.</summary>
    public int NodeOf(EngineState state, AspectInstance aspect) =>
        state.Version[aspect.Index] is var node && node >= 0 ? node : First(aspect);

    /// <summary>The aspect as the engine came in.</summary>
    public int First(AspectInstance aspect)
    {
        var name = aspect.Id;
        if (_made.TryGetValue(name, out var known))
        {
            return known;
        }

        if (aspect.Aspect.Given is not { } given)
        {
            return AddAsFound(name, aspect, [aspect.Prior], []);
        }

        return _underWay.Add(aspect.Index)
            ? AddAsFound(name, aspect, Given(aspect, given, out var parents), parents)
            : throw new DiagnosisException(
                $"The aspect {aspect.Id} depends on a quantity that depends on it.",
                "Take one of the two influences out of the knowledge.");
    }

    public bool Tied(CommonCause cause) => tied.Contains(cause);

    /// <summary>Whether a common cause befell the engine.</summary>
    public int Befell(CommonCause cause)
    {
        ref var node = ref CollectionsMarshal.GetValueRefOrAddDefault(_made, $"befell:{cause.Id}", out var known);
        if (!known)
        {
            node = graph.Chance($"befell:{cause.Id}", Befallen, [], [1 - cause.Prior, cause.Prior]);
        }

        return node;
    }

    /// <summary>A passing state, drawn afresh in a new occasion.</summary>
    public int Afresh(AspectInstance aspect, string occasion)
    {
        var name = $"{aspect.Id}~{occasion}";
        return _made.TryGetValue(name, out var known) ? known : Add(name, aspect, aspect.Prior, []);
    }

    /// <summary>The aspect after a remedy: fresh when the part was replaced, else as before but for what the remedy cures.</summary>
    public int After(int before, AspectInstance aspect, Remedy remedy, string entry)
    {
        var name = remedy.Replaces ? $"{aspect.Id}~{entry}" : $"{aspect.Id}~{entry}~{before}";
        if (_made.TryGetValue(name, out var known))
        {
            return known;
        }

        var states = aspect.StateNames.Length;
        if (remedy.Replaces)
        {
            return Add(name, aspect, Fresh(aspect, remedy.NewPartBad ?? 0), []);
        }

        var table = new double[states * states];
        for (var s = 0; s < states; s++)
        {
            var cured = s == 0 ? null : RemedyReach.CureOf(remedy, aspect, aspect.StateNames[s]);
            table[s * states + s] += cured?.NotCured ?? 1;
            table[s * states] += cured is null ? 0 : 1 - cured.NotCured;
        }

        return Add(name, aspect, table, [before]);
    }

    /// <summary>The aspect after something went wrong on the engine: what was sound has any of its faults with the chance that they have in an engine brought in.</summary>
    public int Since(int before, AspectInstance aspect, string entry)
    {
        var name = $"{aspect.Id}~{entry}~{before}~since";
        if (_made.TryGetValue(name, out var known))
        {
            return known;
        }

        var states = aspect.StateNames.Length;
        var table = new double[states * states];
        for (var s = 0; s < states; s++)
        {
            table[s] = aspect.Prior[s];
            table[s * states + s] = s == 0 ? table[0] : 1;
        }

        return Add(name, aspect, table, [before]);
    }

    /// <summary>Whether a fault that comes and goes shows in this occasion.</summary>
    public int Shows(int version, AspectInstance aspect, string occasion)
    {
        ref var node = ref CollectionsMarshal.GetValueRefOrAddDefault(_made, $"{graph[version].Name}?{occasion}", out var known);
        if (!known)
        {
            var table = new double[aspect.StateNames.Length * 2];
            for (var s = 0; s < aspect.StateNames.Length; s++)
            {
                var showing = s == 0 ? 0 : aspect.Conditions[s - 1].Shows ?? 0;
                table[s * 2 + 1] = showing;
                table[s * 2] = 1 - showing;
            }

            node = graph.Chance($"{graph[version].Name}?{occasion}", Hidden, [version], table);
        }

        return node;
    }

    /// <summary>The part known to be good that sits at a seat during a test: sound, or bad after all.</summary>
    public int KnownGood(PartInstance seat, double notGood)
    {
        ref var node = ref CollectionsMarshal.GetValueRefOrAddDefault(_made, $"known-good:{seat.Id}", out var known);
        if (!known)
        {
            node = graph.Chance($"known-good:{seat.Id}", Substitute, [], [1 - notGood, notGood]);
        }

        return node;
    }

    public int OfTool(Tool tool, ToolAspect aspect)
    {
        ref var node = ref CollectionsMarshal.GetValueRefOrAddDefault(_made, $"tool:{tool.Id}.{aspect.Id}", out var known);
        if (!known)
        {
            double[] faults = [.. aspect.Conditions.Select(c => c.Prior)];
            node = graph.Chance(
                $"tool:{tool.Id}.{aspect.Id}", [AspectInstance.Sound, .. aspect.Conditions.Select(c => c.Id)], [], [1 - faults.Sum(), .. faults]);
        }

        return node;
    }

    private static double[] Fresh(AspectInstance aspect, double bad)
    {
        var faults = aspect.Prior.Skip(1).Sum();
        var fresh = Array.ConvertAll(aspect.Prior, p => faults == 0 ? 0 : p / faults * bad);
        fresh[0] = faults == 0 ? 1 : 1 - bad;
        return fresh;
    }

    /// <summary>Rows of chances by level of the quantity.</summary>
    private double[][] Given(AspectInstance aspect, AspectGiven given, out int[] parents)
    {
        var copies = new QuantityCopies(this, new CopyContext(AsFound, new SetUpState(model, given.SetUp)), []);
        var quantity = model.Quantity(given.Quantity);
        var cylinder = quantity.Per == QuantityScope.Engine ? 0
            : aspect.Position >= 0 ? aspect.Part.Cylinders[aspect.Position] : aspect.Part.Cylinders[0];
        var signal = copies.Of(given.Quantity, cylinder);
        parents = signal.IsConstant ? [] : [signal.Node];
        var rows = new double[signal.Map.Length][];
        for (var s = 0; s < rows.Length; s++)
        {
            var stated = given.Rows.GetValueOrDefault(quantity.Levels[signal.Map[s]]);
            rows[s] = [0, .. aspect.Conditions.Select((condition, c) => stated?.TryGetValue(condition.Id, out var p) == true ? p : aspect.Prior[c + 1])];
            rows[s][0] = 1 - rows[s].Skip(1).Sum();
        }

        return rows;
    }

    private int AddAsFound(string name, AspectInstance aspect, double[][] levels, int[] parents)
    {
        Swayed[] swayed = [.. aspect.Swayed.Where(s => Tied(s.Cause))];
        return Add(name, aspect, AsFoundTable.Of(swayed, levels), [.. parents, .. swayed.Select(s => Befell(s.Cause))]);
    }

    private int Add(string name, AspectInstance aspect, double[] table, int[] parents)
    {
        var node = graph.Chance(name, aspect.StateNames, parents, table);
        _made[name] = node;
        _versions.Add((node, aspect));
        return node;
    }
}
