namespace Undercowl.Inference;

/// <summary>
/// The tables that are still to be multiplied, with who has which variable, and the one operation on them: join two and
/// sum out, on the spot, every variable that no other table has.
/// </summary>
internal sealed class TableSet
{
    private readonly Joining _joining;
    private readonly bool[] _kept;
    private readonly bool[] _drop;
    private readonly double[] _logStates;
    private readonly int[] _seen;
    private readonly List<Table> _scalars = [];
    private int _mark;

    public TableSet(Tape tape, Relevant relevant, IReadOnlyList<int> kept, EliminationOptions options)
    {
        var count = relevant.States.Length;
        _joining = new Joining(tape, relevant.States, options.RowBudget);
        _kept = new bool[count];
        foreach (var v in kept)
            _kept[v] = true;
        _drop = new bool[count];
        _seen = new int[count];
        _logStates = new double[count];
        for (var v = 0; v < count; v++)
            _logStates[v] = Math.Log2(Math.Max(1, relevant.Remaining(v)));
        Of = new List<Table>[count];
        for (var v = 0; v < count; v++)
            Of[v] = [];
        Stale = new bool[count];
    }

    /// <summary>The tables that have variable v.</summary>
    public List<Table>[] Of { get; }

    /// <summary>Set for each variable whose tables changed; whoever keeps costs clears it.</summary>
    public bool[] Stale { get; }

    /// <summary>Tables without variables: one for each unconnected part, at the end.</summary>
    public IReadOnlyList<Table> Scalars => _scalars;

    /// <summary>A join came out empty: the evidence is contradictory and nothing further matters.</summary>
    public bool Empty { get; private set; }

    public bool IsKept(int v) => _kept[v];

    public double LogStates(int v) => _logStates[v];

    public void Attach(Table table)
    {
        if (table.Scope.Length == 0)
            _scalars.Add(table);
        foreach (var v in table.Scope)
        {
            Of[v].Add(table);
            Stale[v] = true;
        }
    }

    /// <summary>Joins two tables (or sums one, when b is null) and returns what takes their place.</summary>
    public Table Join(Table a, Table? b)
    {
        Detach(a);
        if (b is not null)
            Detach(b);
        foreach (var v in a.Scope)
            _drop[v] = !_kept[v] && Of[v].Count == 0;
        foreach (var v in b?.Scope ?? [])
            _drop[v] = !_kept[v] && Of[v].Count == 0;
        // The larger table leads: its rows are visited once, the smaller one's groups again and again.
        var joined = b is not null && b.Count > a.Count ? _joining.Join(b, a, _drop) : _joining.Join(a, b, _drop);
        Empty |= joined.Count == 0;
        Attach(joined);
        return joined;
    }

    /// <summary>
    /// Log2 of the rows that joining these tables gives if states meet independently: the product of their rows divided by
    /// the states of each variable once for every table beyond the first that has it; never more than the dense size.
    /// </summary>
    public double Estimate(IReadOnlyList<Table> tables, out double dense)
    {
        _mark++;
        double rows = 0, all = 0;
        for (var i = 0; i < tables.Count; i++)
        {
            rows += Math.Log2(tables[i].Count);
            foreach (var v in tables[i].Scope)
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

    /// <summary>The joint states of these variables that occur in the table, as a table of ones; not one of the set.</summary>
    public Table Project(Table table, int[] variables) => _joining.Project(table, variables);

    /// <summary>Keeps only these rows of a table and returns what takes its place.</summary>
    public Table Keep(Table table, int[] rows)
    {
        Detach(table);
        var kept = _joining.Select(table, rows);
        Attach(kept);
        return kept;
    }

    /// <summary>Joins all of these, the pair with the smallest estimated result first.</summary>
    public Table JoinAll(List<Table> tables)
    {
        while (tables.Count > 1 && !Empty)
        {
            var (first, second) = CheapestPair(tables);
            tables[first] = Join(tables[second], tables[first]);
            tables.RemoveAt(second);
        }

        return tables[0];
    }

    /// <summary>Places of the two tables, the lower first, whose join is estimated to give the fewest rows.</summary>
    public (int First, int Second) CheapestPair(IReadOnlyList<Table> tables)
    {
        var pair = new Table[2];
        var (first, second, least) = (0, 1, double.PositiveInfinity);
        for (var i = 1; tables.Count > 2 && i < tables.Count; i++)
        {
            for (var j = 0; j < i; j++)
            {
                pair[0] = tables[i];
                pair[1] = tables[j];
                if (Estimate(pair, out _) is var rows && rows < least)
                    (first, second, least) = (j, i, rows);
            }
        }

        return (first, second);
    }

    /// <summary>
    /// How many pairs of neighbours eliminating a variable joins that are not joined yet; weighted, a pair counts its bits multiplied. What
    /// is open in <paramref name="front"/> does not count.
    /// </summary>
    public double Fill(int v, bool weighted, Table? front = null)
    {
        _mark++;
        var neighbours = new List<int>();
        foreach (var table in Of[v])
        {
            foreach (var u in table.Scope)
            {
                if (u == v || _seen[u] == _mark || (front?.Covers(u) ?? false))
                    continue;
                _seen[u] = _mark;
                neighbours.Add(u);
            }
        }

        var missing = 0.0;
        for (var i = 0; i < neighbours.Count; i++)
        {
            for (var j = 0; j < i; j++)
            {
                if (!Of[neighbours[i]].Exists(t => t.Covers(neighbours[j])))
                    missing += weighted ? _logStates[neighbours[i]] * _logStates[neighbours[j]] : 1;
            }
        }

        return missing;
    }

    /// <summary>Joins everything that is left over kept variables; null when nothing is.</summary>
    public Table? JoinRest()
    {
        var rest = new List<Table>();
        foreach (var tables in Of)
        {
            foreach (var table in tables)
            {
                if (!rest.Contains(table))
                    rest.Add(table);
            }
        }

        return rest.Count == 0 ? null : JoinAll(rest);
    }

    private void Detach(Table table)
    {
        // A guide was never attached: it says nothing new and keeps no variable alive.
        if (table.Guide)
            return;
        foreach (var v in table.Scope)
        {
            Of[v].Remove(table);
            Stale[v] = true;
        }
    }
}
