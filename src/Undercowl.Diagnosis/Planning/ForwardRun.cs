using Undercowl.Diagnosis.Graph;

namespace Undercowl.Diagnosis.Planning;

/// <summary>
/// Carries joint states drawn from the posterior on to nodes that were added to the graph afterwards: functions follow,
/// chance nodes are drawn, shared out evenly over the draws that have the same parents' states.
/// </summary>
internal sealed class ForwardRun
{
    /// <summary>Steps of this, taken modulo 1, fill the unit interval evenly however many are taken (golden ratio less 1).</summary>
    private const double EvenStep = 0.6180339887498949;

    private readonly NodeGraph _graph;
    private readonly List<byte[]> _states = [];
    private readonly int[] _rows;
    private readonly int[] _order;
    private ulong _random = 0x9E3779B97F4A7C15;

    /// <param name="graph">The graph, grown beyond the network's nodes.</param>
    /// <param name="draws">Rows of <paramref name="nodes"/> states each.</param>
    /// <param name="nodes">Number of nodes that the draws cover.</param>
    public ForwardRun(NodeGraph graph, int[] draws, int nodes)
    {
        _graph = graph;
        Count = draws.Length / nodes;
        _rows = new int[Count];
        _order = NodeGraph.Identity(Count);
        for (var n = 0; n < nodes; n++)
        {
            var states = new byte[Count];
            for (var d = 0; d < states.Length; d++)
            {
                states[d] = (byte)draws[d * nodes + n];
            }

            _states.Add(states);
        }

        Extend();
    }

    public int Count { get; }

    /// <summary>Takes in the nodes that were added to the graph since.</summary>
    public void Extend()
    {
        while (_states.Count < _graph.Count)
        {
            _states.Add(Next(_graph[_states.Count]));
        }
    }

    public int Level(int draw, Signal signal) => signal.IsConstant ? signal.Level : signal.Map[_states[signal.Node][draw]];

    public int State(int draw, int node) => _states[node][draw];

    /// <summary>By draw the state of a node; not to be written to.</summary>
    public byte[] States(int node) => _states[node];

    /// <summary>The next draw, from this one on, in which the node's state is not 0; <see cref="Count"/> when there is none.</summary>
    public int NextFaulty(int node, int from) => _states[node].AsSpan(from).IndexOfAnyExcept((byte)0) is >= 0 and var ahead ? from + ahead : Count;

    private byte[] Next(GraphNode node)
    {
        Array.Clear(_rows);
        var rows = 1;
        foreach (var parent in node.Parents)
        {
            var count = _graph[parent].States.Length;
            var states = _states[parent];
            for (var d = 0; d < states.Length; d++)
            {
                _rows[d] = _rows[d] * count + states[d];
            }

            rows *= count;
        }

        var next = new byte[Count];
        if (node.Function is { } function)
        {
            for (var d = 0; d < next.Length; d++)
            {
                next[d] = (byte)function[_rows[d]];
            }

            return next;
        }

        Shuffle();
        var places = new double[rows];
        for (var r = 0; r < rows; r++)
        {
            places[r] = Unit();
        }

        foreach (var d in _order)
        {
            var target = places[_rows[d]];
            places[_rows[d]] = (target + EvenStep) % 1;
            var first = _rows[d] * node.States.Length;
            var state = 0;
            for (; state < node.States.Length - 1; state++)
            {
                target -= node.Chance![first + state];
                if (target < 0)
                {
                    break;
                }
            }

            next[d] = (byte)state;
        }

        return next;
    }

    private void Shuffle()
    {
        for (var i = _order.Length - 1; i > 0; i--)
        {
            var j = (int)(Unit() * (i + 1));
            (_order[i], _order[j]) = (_order[j], _order[i]);
        }
    }

    /// <summary>A number from 0 to below 1: the SplitMix64 sequence from a fixed start, so that rankings repeat.</summary>
    private double Unit()
    {
        var z = _random += 0x9E3779B97F4A7C15;
        z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EB;
        return ((z ^ (z >> 31)) >> 11) * (1.0 / (1UL << 53));
    }
}
