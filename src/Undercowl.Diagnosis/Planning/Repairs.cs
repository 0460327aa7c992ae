using Undercowl.Diagnosis.Engine;
using Undercowl.Diagnosis.Graph;
using Undercowl.Inference;
using Undercowl.Knowledge;

namespace Undercowl.Diagnosis.Planning;

/// <summary>
/// For each drawn engine the faults that must be mended for the complaint to be gone for good: what is broken and makes no
/// difference to it is left out. A component is one condition of one aspect; component 0 is what cannot be mended here.
/// </summary>
internal sealed class Repairs
{
    public const int NotHere = 0;

    private readonly Dictionary<(int Aspect, int State), int> _components = [];
    private readonly List<(AspectInstance Aspect, int State)> _named = [];

    public Repairs(JobNetwork network, ForwardRun run, Complaint complaint, IReadOnlyDictionary<string, string> setUp)
    {
        var quantity = network.Model.Quantity(complaint.Quantity);
        var signal = network.Laying.Copies(network.Now, setUp, provoked: true).Of(quantity.Id, 0);
        run.Extend();
        bool[] healthy = [.. quantity.Levels.Select(complaint.Healthy.Contains)];
        var complained = new WhatIf(network.Graph, run, signal);
        var reachable = complained.Reads.ToHashSet();
        var aspectsAt = network.Model.Aspects.Select(a => (Aspect: a, Node: network.Conditions.NodeOf(network.Now, a))).ToArray();
        var sourceOf = aspectsAt.Where(a => reachable.Contains(a.Node) && a.Aspect.Aspect.Consequence && a.Aspect.Aspect.Given is not null)
            .ToDictionary(a => a.Node, a => Source(network, run, a.Aspect));
        run.Extend();
        reachable.UnionWith(sourceOf.Values.SelectMany(s => s.Before.Reads));
        var aspects = aspectsAt.Where(p => reachable.Contains(p.Node)).ToArray();
        Needed = new int[run.Count][];
        var bad = new List<int>();
        var alike = Alike(run, reachable);
        for (var d = 0; d < run.Count; d++)
        {
            if (alike[d] < d)
            {
                Needed[d] = Needed[alike[d]];
                continue;
            }

            if (healthy[run.Level(d, signal)])
            {
                Needed[d] = [];
                continue;
            }

            bad.Clear();
            for (var a = 0; a < aspects.Length; a++)
            {
                if (run.State(d, aspects[a].Node) > 0)
                {
                    bad.Add(a);
                }
            }

            Needed[d] = Reduced(d);
        }

        int[] Reduced(int d)
        {
            if (!Healthy(d, bad))
            {
                return [NotHere];
            }

            var mended = Least(m => Healthy(d, m));

            // What only follows from another fault comes back while that lasts.
            foreach (var (source, before) in mended.Select(a => sourceOf.GetValueOrDefault(aspects[a].Node)).Where(s => s.Before is not null).ToArray())
            {
                if (run.Level(d, source) != 0 && Usual(bad))
                {
                    mended = [.. mended.Union(Least(Usual)).Order()];
                }

                bool Usual(List<int> repaired) => before.Level(d, Nodes(repaired)) == 0;
            }

            return [.. mended.Select(a => Component(aspects[a].Aspect, run.State(d, aspects[a].Node)))];
        }

        List<int> Least(Predicate<List<int>> enough)
        {
            var mended = bad.ToList();
            foreach (var one in bad)
            {
                mended.Remove(one);
                if (!enough(mended))
                {
                    mended.Add(one);
                }
            }

            return mended;
        }

        int[] Nodes(List<int> mended) => [.. mended.Select(a => aspects[a].Node)];

        bool Healthy(int d, List<int> mended) => healthy[complained.Level(d, Nodes(mended))];
    }

    /// <summary>By draw: the components that must be mended; empty when the complaint is gone already.</summary>
    public int[][] Needed { get; }

    /// <summary>Number of components, the one that cannot be mended here included.</summary>
    public int Count => _named.Count + 1;

    public string Name(int component) => component == NotHere ? "something not listed" : Words.Cause(_named[component - 1].Aspect, _named[component - 1].State);

    public (AspectInstance Aspect, int State) this[int component] => _named[component - 1];

    /// <summary>The chance that a remedy that acts on these parts mends a component; 0 when it does not touch it.</summary>
    public double Success(Remedy remedy, int[] parts, int component)
    {
        var (aspect, state) = component == NotHere ? default : _named[component - 1];
        if (aspect is null || !parts.Contains(aspect.Part.Index))
        {
            return 0;
        }

        if (remedy.Replaces)
        {
            return 1 - (remedy.NewPartBad ?? 0);
        }

        return RemedyReach.CureOf(remedy, aspect, aspect.StateNames[state]) is { } cure ? 1 - cure.NotCured : 0;
    }

    /// <summary>What a consequence follows from, in the engine as it is now, and how that comes about.</summary>
    private static (Signal Signal, WhatIf Before) Source(JobNetwork network, ForwardRun run, AspectInstance aspect)
    {
        var given = aspect.Aspect.Given!;
        var cylinder = network.Model.Quantity(given.Quantity).Per == QuantityScope.Engine ? 0
            : aspect.Position >= 0 ? aspect.Part.Cylinders[aspect.Position] : aspect.Part.Cylinders[0];
        var signal = network.Laying.Copies(network.Now, given.SetUp).Of(given.Quantity, cylinder);
        return (signal, new WhatIf(network.Graph, run, signal));
    }

    /// <summary>
    /// By draw the first one in which all these nodes have the same states, itself where there is none. Draws are told apart by a
    /// number of 64 bits that sums what each state adds, as nearly all states are 0; the chance that two of a few thousand share one is below 1e-12.
    /// </summary>
    private static int[] Alike(ForwardRun run, IEnumerable<int> nodes)
    {
        var numbers = new ulong[run.Count];
        foreach (var node in nodes)
        {
            var states = run.States(node);
            for (var d = run.NextFaulty(node, 0); d < states.Length; d = run.NextFaulty(node, d + 1))
            {
                numbers[d] += new SplitMix64(((ulong)node << 8) + states[d]).NextBits();
            }
        }

        var first = new Dictionary<ulong, int>();
        var alike = new int[run.Count];
        for (var d = 0; d < alike.Length; d++)
        {
            alike[d] = first.TryGetValue(numbers[d], out var known) ? known : first[numbers[d]] = d;
        }

        return alike;
    }

    private int Component(AspectInstance aspect, int state)
    {
        if (!_components.TryGetValue((aspect.Index, state), out var known))
        {
            _named.Add((aspect, state));
            _components[(aspect.Index, state)] = known = _named.Count;
        }

        return known;
    }
}
