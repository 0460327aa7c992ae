using Undercowl.Diagnosis.Graph;

namespace Undercowl.Diagnosis.Planning;

/// <summary>The level of a signal in a drawn engine if some of its conditions were sound: the functions that lead to it are worked out again.</summary>
internal sealed class WhatIf
{
    private readonly ForwardRun _run;
    private readonly Signal _signal;
    private readonly int[] _places;
    private readonly int[] _functions;
    private readonly int[][] _parents;
    private readonly int[][] _sizes;
    private readonly int[][] _tables;
    private readonly byte[] _drawn;
    private readonly byte[] _changed;
    private int _loaded = -1;

    public WhatIf(NodeGraph graph, ForwardRun run, Signal signal)
    {
        (_run, _signal) = (run, signal);
        var found = new SortedSet<int>();
        Collect(signal.Node);
        _functions = [.. found];
        Reads = [.. _functions.SelectMany(n => graph[n].Parents).Append(signal.Node).Where(n => n >= 0 && !found.Contains(n)).Distinct()];
        var nodes = signal.IsConstant ? 0 : Math.Max(signal.Node, Reads.Append(-1).Max()) + 1;
        _places = new int[nodes];
        Array.Fill(_places, -1);
        foreach (var (place, node) in Reads.Concat(_functions).Index())
        {
            _places[node] = place;
        }

        _parents = Array.ConvertAll(_functions, n => Array.ConvertAll(graph[n].Parents, p => _places[p]));
        _sizes = Array.ConvertAll(_functions, n => Array.ConvertAll(graph[n].Parents, p => graph[p].States.Length));
        _tables = Array.ConvertAll(_functions, n => graph[n].Function!);
        _drawn = new byte[Reads.Length];
        _changed = new byte[Reads.Length + _functions.Length];

        void Collect(int node)
        {
            if (node < 0 || graph[node].Function is null || !found.Add(node))
            {
                return;
            }

            foreach (var parent in graph[node].Parents)
            {
                Collect(parent);
            }
        }
    }

    /// <summary>The nodes, none of them a function, that the signal hangs on.</summary>
    public int[] Reads { get; }

    /// <summary>The level in a draw with these nodes in state 0.</summary>
    public int Level(int draw, ReadOnlySpan<int> sound)
    {
        if (_signal.IsConstant)
        {
            return _signal.Level;
        }

        if (_loaded != draw)
        {
            _loaded = draw;
            for (var i = 0; i < _drawn.Length; i++)
            {
                _drawn[i] = (byte)_run.State(draw, Reads[i]);
            }
        }

        var states = _changed;
        _drawn.CopyTo(states, 0);
        foreach (var node in sound)
        {
            if (node < _places.Length && _places[node] is >= 0 and var place)
            {
                states[place] = 0;
            }
        }

        for (var f = 0; f < _parents.Length; f++)
        {
            int[] parents = _parents[f], sizes = _sizes[f];
            var row = 0;
            for (var i = 0; i < parents.Length; i++)
            {
                row = row * sizes[i] + states[parents[i]];
            }

            states[_drawn.Length + f] = (byte)_tables[f][row];
        }

        return _signal.Map[states[_places[_signal.Node]]];
    }
}
