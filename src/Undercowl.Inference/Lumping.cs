namespace Undercowl.Inference;

/// <summary>
/// Merges states of a node that nothing tells apart: no finding on the node, and no table that reads it, gives two of them
/// different numbers. Goes from the last node to the first, so that merging the levels of an output merges those of the
/// whole chain before it. Exact: the merged state carries the sum of their probabilities, and a root's share is split
/// again by its prior. Nodes that are asked for keep their states.
/// </summary>
internal sealed class Lumping(IReadOnlyList<Leaf> leaves, int[] states, bool[][] allowed, IReadOnlyList<Finding> findings)
{
    private readonly Grouping _grouping = new();
    private readonly List<int>[] _readers = new List<int>[states.Length];

    /// <summary>
    /// For each node the state that stands for each of its states, or null when all stand for themselves. Nodes for which
    /// <paramref name="keep"/> is true are left alone.
    /// </summary>
    public int[]?[] Run(bool[] keep)
    {
        var standFor = new int[]?[states.Length];
        var own = new int[states.Length];
        Array.Fill(own, -1);
        for (var i = 0; i < leaves.Count; i++)
        {
            if (leaves[i].Node >= 0)
                own[leaves[i].Node] = i;
            foreach (var v in leaves[i].Table.Scope)
            {
                if (v != leaves[i].Node)
                    (_readers[v] ??= []).Add(i);
            }
        }

        for (var v = states.Length - 1; v >= 0; v--)
        {
            if (own[v] < 0 || keep[v] || !leaves[own[v]].Table.Covers(v))
                continue;
            var classes = Classes(v, leaves[own[v]]);
            if (classes is null)
                continue;
            standFor[v] = classes;
            foreach (var reader in _readers[v] ?? [])
                KeepRepresentatives(leaves[reader], v, classes);
            Merge(leaves[own[v]], classes);
        }

        return standFor;
    }

    private int[]? Classes(int v, Leaf own)
    {
        var classes = new int[states[v]];
        var readers = _readers[v] ?? [];
        var rows = readers.ConvertAll(i => Rows(leaves[i], v));
        var merged = false;
        for (var s = 0; s < classes.Length; s++)
        {
            classes[s] = s;
            for (var t = 0; t < s; t++)
            {
                if (classes[t] != t || allowed[v][s] != allowed[v][t] || !own.Attached.TrueForAll(f => findings[f].Dense[s] == findings[f].Dense[t]) || !rows.TrueForAll(r => Same(r[s], r[t])))
                    continue;
                classes[s] = t;
                merged = true;
                break;
            }
        }

        return merged ? classes : null;
    }

    /// <summary>For each state of v the numbers in a table by the states of everything else in it, sorted.</summary>
    private List<(int Others, double Value)>[] Rows(Leaf leaf, int v)
    {
        var others = Array.FindAll(leaf.Table.Scope, u => u != v);
        var ids = new int[leaf.Table.Count];
        _grouping.Number(leaf.Table, others, states, ids);
        var rows = new List<(int, double)>[states[v]];
        for (var s = 0; s < rows.Length; s++)
            rows[s] = [];
        var column = leaf.Table.ColumnOf(v);
        for (var r = 0; r < ids.Length; r++)
            rows[column[r]].Add((ids[r], leaf.Table.Values[r]));
        foreach (var row in rows)
            row.Sort();
        return rows;
    }

    private static bool Same(List<(int Others, double Value)> a, List<(int Others, double Value)> b)
    {
        if (a.Count != b.Count)
            return false;
        for (var i = 0; i < a.Count; i++)
        {
            if (a[i] != b[i])
                return false;
        }

        return true;
    }

    private static void KeepRepresentatives(Leaf leaf, int v, int[] classes)
    {
        var column = leaf.Table.ColumnOf(v);
        var rows = new List<int>();
        for (var r = 0; r < column.Length; r++)
        {
            if (classes[column[r]] == column[r])
                rows.Add(r);
        }

        leaf.Take(rows);
    }

    /// <summary>Adds up the rows of the node's own table that differ in merged states alone.</summary>
    private void Merge(Leaf leaf, int[] classes)
    {
        var node = Array.IndexOf(leaf.Table.Scope, leaf.Node);
        var column = leaf.Table.Columns[node];
        var mapped = Array.ConvertAll(column, s => (byte)classes[s]);
        byte[][] columns = [.. leaf.Table.Columns];
        columns[node] = mapped;
        var table = new Table(leaf.Table.Scope, columns, leaf.Table.Count, [.. leaf.Table.Values]);
        var ids = new int[table.Count];
        var groups = _grouping.Number(table, table.Scope, states, ids);
        var first = new int[groups];
        Array.Fill(first, -1);
        var rows = new List<int>();
        for (var r = 0; r < ids.Length; r++)
        {
            if (first[ids[r]] < 0)
            {
                first[ids[r]] = r;
                rows.Add(r);
            }
            else
            {
                table.Values[first[ids[r]]] += table.Values[r];
            }
        }

        leaf.Index = Array.ConvertAll(leaf.Index, s => classes[s]);
        leaf.Table = table;
        leaf.Take(rows);
    }
}
