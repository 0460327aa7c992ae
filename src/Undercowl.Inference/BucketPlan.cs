namespace Undercowl.Inference;

/// <summary>
/// Eliminates variables one at a time, the cheapest next one first, judged by the tables as they are at that moment. The
/// classical way, good for networks of mostly uncertain nodes; on long chains of functions it joins gates in mid-chain over
/// states that can never meet.
/// </summary>
internal sealed class BucketPlan(TableSet tables, EliminationOrder order)
{
    /// <summary>Rows decide only between variables that join equally much.</summary>
    private const double Tie = 1e-6;

    private readonly double[] _cost = new double[tables.Of.Length];

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
            best = Cheaper(v, best);
        }

        return best;
    }

    private int Cheaper(int v, int best)
    {
        if (tables.Stale[v])
        {
            _cost[v] = Cost(v);
            tables.Stale[v] = false;
        }

        return best < 0 || _cost[v] < _cost[best] ? v : best;
    }

    private double Cost(int v)
    {
        if (order == EliminationOrder.MinimumFill)
            return tables.Fill(v, weighted: false);
        var rows = tables.Estimate(tables.Of[v], out var weight);
        return order switch
        {
            EliminationOrder.MinimumWeight => weight,
            EliminationOrder.WeightedFill => tables.Fill(v, weighted: true) + rows * Tie,
            _ => rows,
        };
    }
}
