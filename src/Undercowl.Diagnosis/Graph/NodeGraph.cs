using System.Globalization;
using System.Runtime.InteropServices;
using System.Text;

namespace Undercowl.Diagnosis.Graph;

/// <summary>
/// Nodes in an order in which parents come first: chance nodes (conditions, what shows on an occasion) and functions of
/// other nodes. Equal functions of equal parents are one node, so copies of a quantity in set-ups that treat its ancestors
/// alike are one, and lanes that share a part share what follows from it.
/// </summary>
internal sealed class NodeGraph
{
    private readonly Dictionary<string, int> _functions = new(StringComparer.Ordinal);
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
        var key = new StringBuilder().Append(levels.Count);
        foreach (var p in parents)
        {
            key.Append(',').Append(p);
        }

        key.Append(':');
        foreach (var t in table)
        {
            key.Append((char)('0' + t));
        }

        ref var node = ref CollectionsMarshal.GetValueRefOrAddDefault(_functions, key.ToString(), out var known);
        if (!known)
        {
            node = _nodes.Count;
            _nodes.Add(new GraphNode(string.Create(CultureInfo.InvariantCulture, $"{name}#{node}"), [.. levels], parents, table, null));
        }

        return node;
    }

    private int[] Tabulate(ReadOnlySpan<Signal> inputs, List<int> parents, Func<int[], int> combine)
    {
        var size = 1;
        foreach (var p in parents)
        {
            size *= _nodes[p].States.Length;
        }

        var table = new int[size];
        var state = new int[parents.Count];
        var levels = new int[inputs.Length];
        for (var r = 0; r < size; r++)
        {
            for (var i = 0; i < inputs.Length; i++)
            {
                levels[i] = inputs[i].IsConstant ? inputs[i].Level : inputs[i].Map[state[parents.IndexOf(inputs[i].Node)]];
            }

            table[r] = combine(levels);
            for (var i = state.Length - 1; i >= 0 && ++state[i] == _nodes[parents[i]].States.Length; i--)
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
