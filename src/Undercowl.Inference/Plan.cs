namespace Undercowl.Inference;

/// <summary>
/// Eliminates variables one at a time, the cheapest next one first, judged by the tables as they are at that moment (not
/// by their dense sizes: tables of functions and ruled-out rows are far smaller). Joins a bucket's tables smallest result
/// first and sums out every variable as soon as no other table has it.
/// </summary>
internal sealed class Plan
{
    private readonly EliminationOrder _order;
    private readonly Joining _joining;
    private readonly double[] _logStates;
    private readonly bool[] _kept;
    private readonly bool[] _drop;
    private readonly List<Table>[] _tablesOf;
    private readonly List<Table> _scalars = [];
    private readonly double[] _cost;
    private readonly bool[] _stale;
    private readonly int[] _seen;
    private int _mark;
    private bool _empty;

    public Plan(Tape tape, Relevant relevant, IEnumerable<Table> leaves, IReadOnlyList<int> kept, EliminationOptions options)
    {
        var count = relevant.States.Length;
        _order = options.Order;
        _joining = new Joining(tape, relevant.States, options.RowBudget);
        _logStates = new double[count];
        for (var v = 0; v < count; v++)
            _logStates[v] = Math.Log2(Math.Max(1, relevant.Remaining(v)));
        _kept = new bool[count];
        foreach (var v in kept)
            _kept[v] = true;
        _drop = new bool[count];
        _tablesOf = new List<Table>[count];
        for (var v = 0; v < count; v++)
            _tablesOf[v] = [];
        _cost = new double[count];
        _stale = new bool[count];
        _seen = new int[count];
        foreach (var table in leaves)
            Attach(table);
    }

    /// <summary>The scalars left at the end: one for each unconnected part.</summary>
    public IReadOnlyList<Table> Scalars => _scalars;

    /// <summary>The table over those kept variables that are still open, or null when there are none.</summary>
    public Table? Kept { get; private set; }

    /// <summary>Sums out everything but the kept variables; false when a join came out empty: the evidence is contradictory.</summary>
    public bool Run()
    {
        while (!_empty && Cheapest() is var v and >= 0)
        {
            while (!_empty && _tablesOf[v].Count > 1)
                JoinBestPair(_tablesOf[v]);
            if (!_empty && _tablesOf[v].Count == 1)
                Replace(_tablesOf[v][0], null);
        }

        if (_empty)
            return false;

        var rest = new List<Table>();
        for (var v = 0; v < _kept.Length; v++)
        {
            foreach (var table in _tablesOf[v])
            {
                if (!rest.Contains(table))
                    rest.Add(table);
            }
        }

        while (!_empty && rest.Count > 1)
        {
            rest.Sort((x, y) => x.Count.CompareTo(y.Count));
            var joined = Replace(rest[0], rest[1]);
            rest.RemoveRange(0, 2);
            rest.Add(joined);
        }

        Kept = rest.Count == 0 ? null : rest[0];
        return !_empty;
    }

    private void Attach(Table table)
    {
        if (table.Scope.Length == 0)
            _scalars.Add(table);
        foreach (var v in table.Scope)
        {
            _tablesOf[v].Add(table);
            _stale[v] = true;
        }
    }

    private void Detach(Table table)
    {
        foreach (var v in table.Scope)
        {
            _tablesOf[v].Remove(table);
            _stale[v] = true;
        }
    }

    private int Cheapest()
    {
        var best = -1;
        for (var v = 0; v < _cost.Length; v++)
        {
            if (_kept[v] || _tablesOf[v].Count == 0)
                continue;
            if (_stale[v])
            {
                _cost[v] = Cost(v);
                _stale[v] = false;
            }

            if (best < 0 || _cost[v] < _cost[best])
                best = v;
        }

        return best;
    }

    private double Cost(int v)
    {
        switch (_order)
        {
            case EliminationOrder.MinimumFill:
                return Fill(v);
            case EliminationOrder.MinimumWeight:
                Estimate(_tablesOf[v], out var weight);
                return weight;
            default:
                return Estimate(_tablesOf[v], out _);
        }
    }

    /// <summary>
    /// Log2 of the rows that joining these tables gives if states meet independently: the product of their rows divided by
    /// the states of each variable once for every table beyond the first that has it; never more than the dense size.
    /// </summary>
    private double Estimate(List<Table> tables, out double dense)
    {
        _mark++;
        double rows = 0, all = 0;
        foreach (var table in tables)
        {
            rows += Math.Log2(table.Count);
            foreach (var v in table.Scope)
            {
                if (_seen[v] == _mark)
                {
                    rows -= _logStates[v];
                    continue;
                }

                _seen[v] = _mark;
                all += _logStates[v];
            }
        }

        dense = all;
        return Math.Min(Math.Max(rows, 0), all);
    }

    private double Fill(int v)
    {
        _mark++;
        var neighbours = new List<int>();
        foreach (var table in _tablesOf[v])
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
                missing += _tablesOf[neighbours[i]].Exists(t => t.Covers(neighbours[j])) ? 0 : 1;
        }

        return missing;
    }

    private void JoinBestPair(List<Table> tables)
    {
        int bestI = 0, bestJ = 1;
        var best = double.PositiveInfinity;
        var pair = new List<Table>(2) { tables[0], tables[1] };
        for (var i = 0; tables.Count > 2 && i < tables.Count; i++)
        {
            for (var j = 0; j < i; j++)
            {
                pair[0] = tables[i];
                pair[1] = tables[j];
                var cost = Estimate(pair, out _);
                if (cost >= best)
                    continue;
                best = cost;
                bestI = i;
                bestJ = j;
            }
        }

        Replace(tables[bestI], tables[bestJ]);
    }

    private Table Replace(Table a, Table? b)
    {
        Detach(a);
        if (b is not null)
            Detach(b);
        foreach (var v in a.Scope)
            _drop[v] = !_kept[v] && _tablesOf[v].Count == 0;
        foreach (var v in b?.Scope ?? [])
            _drop[v] = !_kept[v] && _tablesOf[v].Count == 0;
        // The larger table leads: its rows are visited once, the smaller one's groups again and again.
        var joined = b is not null && b.Count > a.Count ? _joining.Join(b, a, _drop) : _joining.Join(a, b, _drop);
        _empty |= joined.Count == 0;
        Attach(joined);
        return joined;
    }
}
