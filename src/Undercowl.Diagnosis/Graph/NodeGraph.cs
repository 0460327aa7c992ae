using System.Globalization;

namespace Undercowl.Diagnosis.Graph;

/// <summary>
/// Nodes in an order in which parents come first: chance nodes (conditions, what shows on an occasion) and functions of
/// other nodes. Equal functions of equal parents are one node, so copies of a quantity in set-ups that treat its ancestors
/// alike are one, and lanes that share a part share what follows from it.
/// </summary>
internal sealed class NodeGraph
{
    /// <summary>Functions by a number mixed from parents and table; of those that share one, each after the first has the next number that is free.</summary>
    private readonly Dictionary<ulong, int> _functions = [];
    private readonly List<GraphNode> _nodes = [];
    private readonly List<List<int>> _gathered = [];

    public int Count => _nodes.Count;

    /// <summary>Nodes in which the lanes meet, by place in the row: the first lane, the first two, and so on.</summary>
    public IReadOnlyList<IReadOnlyList<int>> Gathered => _gathered;

    public GraphNode this[int node] => _nodes[node];

    /// <summary>A node whose states have probabilities given its parents: parents in order, last fastest, own state fastest of all.</summary>
    public int Chance(string name, string[] states, int[] parents, double[] table)
    {
        _nodes.Add(new GraphNode(name, states, parents, null, table));
        return _nodes.Count - 1;
    }

    /// <summary>
    /// The level that <paramref name="combine"/> gives for the levels of the inputs. Constant inputs and inputs that
    /// make no difference are folded away; a function of one node is that node, seen through a map.
    /// </summary>
    public Signal Function(string name, IReadOnlyList<string> levels, ReadOnlySpan<Signal> inputs, Func<int[], int> combine)
    {
        var parents = new List<int>(inputs.Length);
        foreach (var input in inputs)
        {
            if (!input.IsConstant && !parents.Contains(input.Node))
            {
                parents.Add(input.Node);
            }
        }

        var table = Tabulate(inputs, parents, combine);
        DropIdle(parents, ref table);
        if (parents.Count == 0)
        {
            return Signal.Constant(table[0]);
        }

        if (parents.Count == 1)
        {
            return Signal.Of(parents[0], table);
        }

        return new Signal(Intern(name, levels, [.. parents], table), Identity(levels.Count));
    }

    /// <summary>Notes that this is what a number of lanes come to together.</summary>
    public void Gather(int lanes, Signal signal)
    {
        while (_gathered.Count < lanes)
        {
            _gathered.Add([]);
        }

        if (!signal.IsConstant && !_gathered[lanes - 1].Contains(signal.Node))
        {
            _gathered[lanes - 1].Add(signal.Node);
        }
    }

    public static int[] Identity(int count) => [.. Enumerable.Range(0, count)];

    private int Intern(string name, IReadOnlyList<string> levels, int[] parents, int[] table)
    {
        var key = Mixed((ulong)levels.Count, parents.Length);
        foreach (var p in parents)
        {
            key = Mixed(key, p);
        }

        foreach (var t in table)
        {
            key = Mixed(key, t);
        }

        for (; _functions.TryGetValue(key, out var known); key++)
        {
            var like = _nodes[known];
            if (like.States.Length == levels.Count && like.Parents.AsSpan().SequenceEqual(parents) && like.Function.AsSpan().SequenceEqual(table))
            {
                return known;
            }
        }

        var node = _nodes.Count;
        _functions.Add(key, node);
        _nodes.Add(new GraphNode(string.Create(CultureInfo.InvariantCulture, $"{name}#{node}"), [.. levels], parents, table, null));
        return node;
    }

    /// <summary>One step of the 64-bit FNV-1a hash (G. Fowler, L. C. Noll, K.-P. Vo), a whole number at a time.</summary>
    private static ulong Mixed(ulong hash, int value) => (hash ^ (uint)value) * 1099511628211;

    private int[] Tabulate(ReadOnlySpan<Signal> inputs, List<int> parents, Func<int[], int> combine)
    {
        var size = 1;
        foreach (var p in parents)
        {
            size *= _nodes[p].States.Length;
        }

        var table = new int[size];
        var state = new int[parents.Count + 1];
        var levels = new int[inputs.Length];
        // A constant is read at the place behind the parents, which stays 0.
        var (places, maps, counts) = (new int[inputs.Length], new int[inputs.Length][], new int[parents.Count]);
        for (var i = 0; i < places.Length; i++)
        {
            places[i] = inputs[i].IsConstant ? parents.Count : parents.IndexOf(inputs[i].Node);
            maps[i] = inputs[i].Map;
        }

        for (var i = 0; i < counts.Length; i++)
        {
            counts[i] = _nodes[parents[i]].States.Length;
        }

        for (var r = 0; r < size; r++)
        {
            for (var i = 0; i < places.Length; i++)
            {
                levels[i] = maps[i][state[places[i]]];
            }

            table[r] = combine(levels);
            for (var i = counts.Length - 1; i >= 0 && ++state[i] == counts[i]; i--)
            {
                state[i] = 0;
            }
        }

        return table;
    }

    /// <summary>Takes out parents whose state never changes the result.</summary>
    private void DropIdle(List<int> parents, ref int[] table)
    {
        for (var i = parents.Count - 1; i >= 0; i--)
        {
            var states = _nodes[parents[i]].States.Length;
            var inner = 1;
            for (var k = i + 1; k < parents.Count; k++)
            {
                inner *= _nodes[parents[k]].States.Length;
            }

            var idle = true;
            for (var r = 0; r < table.Length && idle; r++)
            {
                var first = r - r / inner % states * inner;
                idle = table[r] == table[first];
            }

            if (!idle)
            {
                continue;
            }

            var reduced = new int[table.Length / states];
            for (var r = 0; r < reduced.Length; r++)
            {
                reduced[r] = table[r / inner * inner * states + r % inner];
            }

            table = reduced;
            parents.RemoveAt(i);
        }
    }
}

/// <summary>A node: a chance node has a <see cref="Chance"/> table, a function has a <see cref="Function"/> table.</summary>
internal sealed record GraphNode(string Name, string[] States, int[] Parents, int[]? Function, double[]? Chance);
