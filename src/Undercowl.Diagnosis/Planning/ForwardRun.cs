using Undercowl.Diagnosis.Graph;

namespace Undercowl.Diagnosis.Planning;

/// <summary>
/// Carries joint states drawn from the posterior on to nodes that were added to the graph afterwards: functions follow,
/// chance nodes are drawn. One row of states per draw.
/// </summary>
internal sealed class ForwardRun
{
    private readonly NodeGraph _graph;
    private readonly byte[][] _states;
    private ulong _random = 0x9E3779B97F4A7C15;

    /// <param name="graph">The graph, grown beyond the network's nodes.</param>
    /// <param name="draws">Rows of <paramref name="nodes"/> states each.</param>
    /// <param name="nodes">Number of nodes that the draws cover.</param>
    public ForwardRun(NodeGraph graph, int[] draws, int nodes)
    {
        _graph = graph;
        _states = new byte[draws.Length / nodes][];
        for (var d = 0; d < _states.Length; d++)
        {
            var states = _states[d] = new byte[graph.Count];
            for (var n = 0; n < nodes; n++)
            {
                states[n] = (byte)draws[d * nodes + n];
            }
        }

        Carry(nodes);
    }

    public int Count => _states.Length;

    /// <summary>Takes in the nodes that were added to the graph since.</summary>
    public void Extend()
    {
        var known = _states.Length == 0 ? _graph.Count : _states[0].Length;
        if (known == _graph.Count)
        {
            return;
        }

        for (var d = 0; d < _states.Length; d++)
        {
            Array.Resize(ref _states[d], _graph.Count);
        }

        Carry(known);
    }

    public int Level(int draw, Signal signal) => signal.IsConstant ? signal.Level : signal.Map[_states[draw][signal.Node]];

    public int State(int draw, int node) => _states[draw][node];

    /// <summary>The level of a signal if some nodes were in other states: the functions above it are worked out again.</summary>
    /// <param name="draw">Which draw.</param>
    /// <param name="signal">What is asked.</param>
    /// <param name="order">The functions that lead to it, parents first; see <see cref="FunctionsBefore"/>.</param>
    /// <param name="sound">Nodes put to state 0.</param>
    /// <param name="buffer">One byte per node of the graph.</param>
    public int LevelIf(int draw, Signal signal, int[] order, ReadOnlySpan<int> sound, byte[] buffer)
    {
        if (signal.IsConstant)
        {
            return signal.Level;
        }

        _states[draw].CopyTo(buffer, 0);
        foreach (var node in sound)
        {
            buffer[node] = 0;
        }

        foreach (var node in order)
        {
            buffer[node] = (byte)_graph[node].Function![Row(_graph[node], buffer)];
        }

        return signal.Map[buffer[signal.Node]];
    }

    public int[] FunctionsBefore(Signal signal)
    {
        var found = new SortedSet<int>();
        Collect(signal.Node);
        return [.. found];

        void Collect(int node)
        {
            if (node < 0 || _graph[node].Function is null || !found.Add(node))
            {
                return;
            }

            foreach (var parent in _graph[node].Parents)
            {
                Collect(parent);
            }
        }
    }

    private void Carry(int from)
    {
        foreach (var states in _states)
        {
            for (var n = from; n < states.Length; n++)
            {
                states[n] = Next(_graph[n], states);
            }
        }
    }

    private byte Next(GraphNode node, byte[] states)
    {
        var row = Row(node, states);
        if (node.Function is { } function)
        {
            return (byte)function[row];
        }

        var target = Unit();
        var first = row * node.States.Length;
        for (var s = 0; s < node.States.Length - 1; s++)
        {
            target -= node.Chance![first + s];
            if (target < 0)
            {
                return (byte)s;
            }
        }

        return (byte)(node.States.Length - 1);
    }

    private int Row(GraphNode node, byte[] states)
    {
        var row = 0;
        foreach (var parent in node.Parents)
        {
            row = row * _graph[parent].States.Length + states[parent];
        }

        return row;
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
