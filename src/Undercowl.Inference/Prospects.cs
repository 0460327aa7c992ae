namespace Undercowl.Inference;

/// <summary>
/// The most that findings still to come can make of the rows of a front. Each finding is carried back along the functions that lie
/// between it and the front, taking the largest where a state is free; parts not yet summed may come out as suits it best. So no
/// number is too small, and a row at odds with a coming finding is known to be light. All numbers are logarithms: many findings
/// at odds with a row must not make it nothing.
/// </summary>
internal sealed class Prospects
{
    /// <summary>A finding carried back over more joint states than this is no longer followed, but taken at its best.</summary>
    private const int Widest = 4096;

    private readonly Evidence _evidence;
    private readonly int[] _states;
    private readonly Leaf?[] _leafOf;
    private readonly bool[] _after;

    /// <param name="evidence">The findings.</param>
    /// <param name="leaves">All tables.</param>
    /// <param name="states">States of each node.</param>
    /// <param name="gathers">The nodes in which the parts meet: findings are carried back over these and what follows from them.</param>
    public Prospects(Evidence evidence, IReadOnlyList<Leaf> leaves, int[] states, bool[] gathers)
    {
        (_evidence, _states) = (evidence, states);
        _leafOf = new Leaf[states.Length];
        _after = (bool[])gathers.Clone();
        foreach (var leaf in leaves)
        {
            if (leaf.Node < 0)
                continue;
            _leafOf[leaf.Node] = leaf;
            _after[leaf.Node] |= Array.Exists(leaf.Table.Scope, v => v != leaf.Node && _after[v]);
        }
    }

    /// <summary>Adds to each row's weight the most that this table's findings can still make of it; returns what is the same for all rows.</summary>
    public double Weigh(Leaf coming, Table front, double[] weights)
    {
        var largest = coming.LogLargest(_evidence);
        if (coming.Node < 0 || coming.Attached.Count == 0 || !_after[coming.Node] || coming.Attached.Exists(f => _evidence.Findings[f].Observed >= 0) || !coming.Table.Covers(coming.Node))
            return largest;
        int[] scope = [coming.Node];
        var best = Impossible(_states[coming.Node]);
        for (var r = 0; r < coming.Index.Length; r++)
            best[coming.Index[r]] = coming.LogAttached(_evidence, r) - largest;
        while (Array.FindLastIndex(scope, v => !front.Covers(v)) is var i and >= 0)
            (scope, best) = Back(scope, best, scope[i]);
        var index = new int[front.Count];
        foreach (var v in scope)
        {
            var column = front.ColumnOf(v);
            for (var r = 0; r < index.Length; r++)
                index[r] = index[r] * _states[v] + column[r];
        }

        for (var r = 0; r < index.Length; r++)
            weights[r] += best[index[r]];
        return largest;
    }

    /// <summary>Replaces a node by its parents, or where that leads too far leaves it to take its best state.</summary>
    private (int[] Scope, double[] Best) Back(int[] scope, double[] best, int node)
    {
        int[] others = [.. scope.Where(v => v != node)];
        if (_after[node] && _leafOf[node] is { } leaf && leaf.Table.Covers(node))
        {
            int[] wide = [.. others.Union(leaf.Table.Scope.Where(v => v != node)).Order()];
            if (Size(wide) <= Widest)
                return (wide, Through(leaf.Table, scope, best, wide));
        }

        return (others, Free(scope, best, others));
    }

    private static double[] Impossible(long size)
    {
        var best = new double[size];
        Array.Fill(best, double.NegativeInfinity);
        return best;
    }

    private long Size(int[] scope) => scope.Aggregate(1L, (size, v) => Math.Min(size * _states[v], int.MaxValue));

    private double[] Free(int[] scope, double[] best, int[] others)
    {
        var freed = Impossible(Size(others));
        var states = new int[_states.Length];
        for (var i = 0; i < best.Length; i++)
        {
            Spread(i, scope, states);
            ref var at = ref freed[Index(others, states)];
            at = Math.Max(at, best[i]);
        }

        return freed;
    }

    /// <summary>For the joint states of <paramref name="wide"/> the most over the rows of the table that go with them; a chance is taken for certain.</summary>
    private double[] Through(Table table, int[] scope, double[] best, int[] wide)
    {
        var through = Impossible(Size(wide));
        int[] free = [.. wide.Where(v => !table.Covers(v))];
        var states = new int[_states.Length];
        for (var r = 0; r < table.Count; r++)
        {
            for (var i = 0; i < table.Scope.Length; i++)
                states[table.Scope[i]] = table.Columns[i][r];
            for (var i = 0; i < Size(free); i++)
            {
                Spread(i, free, states);
                ref var at = ref through[Index(wide, states)];
                at = Math.Max(at, best[Index(scope, states)]);
            }
        }

        return through;
    }

    private void Spread(int index, int[] scope, int[] states)
    {
        for (var i = scope.Length - 1; i >= 0; i--)
        {
            states[scope[i]] = index % _states[scope[i]];
            index /= _states[scope[i]];
        }
    }

    private int Index(int[] scope, int[] states)
    {
        var index = 0;
        foreach (var v in scope)
            index = index * _states[v] + states[v];
        return index;
    }
}
