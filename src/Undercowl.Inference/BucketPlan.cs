namespace Undercowl.Inference;

/// <summary>
/// Eliminates variables one at a time, the cheapest next one first, judged by the tables as they are at that moment. The
/// classical way, good for networks of mostly uncertain nodes; on long chains of functions it joins gates in mid-chain over
/// states that can never meet.
/// </summary>
internal sealed class BucketPlan(TableSet tables, EliminationOrder order)
{
    private readonly double[] _cost = new double[tables.Of.Length];
    private readonly int[] _seen = new int[tables.Of.Length];
    private int _mark;

    public void Run()
    {
        while (!tables.Empty && Cheapest() is var v and >= 0)
        {
            var joined = tables.JoinAll([.. tables.Of[v]]);
            if (!tables.Empty && tables.Of[v].Count > 0)
                tables.Join(joined, null);
        }
    }

    private int Cheapest()
    {
        var best = -1;
        for (var v = 0; v < _cost.Length; v++)
        {
            if (tables.IsKept(v) || tables.Of[v].Count == 0)
                continue;
            if (tables.Stale[v])
            {
                _cost[v] = Cost(v);
                tables.Stale[v] = false;
            }

            if (best < 0 || _cost[v] < _cost[best])
                best = v;
        }

        return best;
    }

    private double Cost(int v)
    {
        if (order == EliminationOrder.MinimumFill)
            return Fill(v);
        var rows = tables.Estimate(tables.Of[v], out var weight);
        return order == EliminationOrder.MinimumWeight ? weight : rows;
    }

    private int Fill(int v)
    {
        _mark++;
        var neighbours = new List<int>();
        foreach (var table in tables.Of[v])
        {
            foreach (var u in table.Scope)
            {
                if (u == v || _seen[u] == _mark)
                    continue;
                _seen[u] = _mark;
                neighbours.Add(u);
            }
        }

        var missing = 0;
        for (var i = 0; i < neighbours.Count; i++)
        {
            for (var j = 0; j < i; j++)
                missing += tables.Of[neighbours[i]].Exists(t => t.Covers(neighbours[j])) ? 0 : 1;
        }

        return missing;
    }
}
