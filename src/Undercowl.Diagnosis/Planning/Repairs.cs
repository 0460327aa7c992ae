using Undercowl.Diagnosis.Engine;
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
        var order = run.FunctionsBefore(signal);
        var reachable = new HashSet<int>(order.SelectMany(n => network.Graph[n].Parents)) { signal.Node };
        var aspects = network.Model.Aspects.Select(a => (Aspect: a, Node: network.Conditions.NodeOf(network.Now, a))).Where(p => reachable.Contains(p.Node)).ToArray();
        var buffer = new byte[network.Graph.Count];
        Needed = new int[run.Count][];
        var bad = new List<int>();
        for (var d = 0; d < run.Count; d++)
        {
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
            var mended = bad.ToList();
            if (!Healthy(d, mended))
            {
                return [NotHere];
            }

            foreach (var one in bad)
            {
                mended.Remove(one);
                if (!Healthy(d, mended))
                {
                    mended.Add(one);
                }
            }

            return [.. mended.Select(a => Component(aspects[a].Aspect, run.State(d, aspects[a].Node)))];
        }

        bool Healthy(int d, List<int> mended) =>
            healthy[run.LevelIf(d, signal, order, mended.ConvertAll(a => aspects[a].Node).ToArray(), buffer)];
    }

    /// <summary>By draw: the components that must be mended; empty when the complaint is gone already.</summary>
    public int[][] Needed { get; }

    /// <summary>Number of components, the one that cannot be mended here included.</summary>
    public int Count => _named.Count + 1;

    public string Name(int component) => component == NotHere ? "something not listed" : Words.Cause(_named[component - 1].Aspect, _named[component - 1].State);

    public (AspectInstance Aspect, int State) this[int component] => _named[component - 1];

    /// <summary>The chance that a remedy on the part at a seat mends a component; 0 when it does not touch it.</summary>
    public double Success(Remedy remedy, int part, int component)
    {
        var (aspect, state) = component == NotHere ? default : _named[component - 1];
        if (aspect is null || aspect.Part.Index != part)
        {
            return 0;
        }

        if (remedy.Replaces)
        {
            return 1 - (remedy.NewPartBad ?? 0);
        }

        var cure = remedy.Cures.FirstOrDefault(c =>
            c.Aspect == aspect.Aspect.Id && (c.Conditions.Count == 0 || c.Conditions.Contains(aspect.StateNames[state])));
        return cure is null ? 0 : 1 - cure.NotCured;
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
