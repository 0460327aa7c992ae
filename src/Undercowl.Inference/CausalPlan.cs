namespace Undercowl.Inference;

/// <summary>
/// Multiplies along the arrows. A table with functions of other nodes in it waits until the tables that own those functions
/// are there, so two gates are never joined in mid-chain over states that cannot meet; then a table never has more rows
/// than its variables have joint states that can really occur, which for copies of one chain is a tiny part of their
/// product. Uncertain nodes may stay open and be shared by several tables until they are summed out. What many tables read
/// (a shared output) is left apart and only guides them. Among the steps that are possible the one with the smallest
/// estimated result goes first, after surcharges that keep different things apart while anything else can be done.
/// Measured against the classical orders in docs/decisions/inference-form.md.
/// </summary>
internal sealed class CausalPlan
{
    /// <summary>Bits charged for joining tables that own different things: these joins come last but one.</summary>
    private const double Merging = 20;

    /// <summary>Bits charged for joining different things only to be rid of an uncertain node both have: these come last.</summary>
    private const double Strangers = 40;

    /// <summary>Tables count as copies of one thing when they share this part of their sources.</summary>
    private const double Alike = 0.75;

    private readonly TableSet _tables;
    private readonly Sources _sources;
    private readonly HeldTables _held;
    private readonly int[] _waitingOf;
    private readonly bool[] _changed;
    private readonly double[] _cost;
    private readonly List<Waiting> _waiting = [];
    private readonly List<Table> _bucket = [];
    private readonly Dictionary<Table, int> _lowest = [];

    public CausalPlan(TableSet tables, IReadOnlyList<Leaf> leaves)
    {
        var count = tables.Of.Length;
        _tables = tables;
        _sources = new Sources(leaves, count);
        _held = new HeldTables(tables, _sources);
        _waitingOf = new int[count];
        _changed = new bool[count];
        _cost = new double[count];
        foreach (var leaf in leaves)
        {
            var defines = leaf.Node >= 0 && _sources.Functions[leaf.Node] ? leaf.Node : -1;
            if (Array.Exists(leaf.Table.Scope, v => _sources.Functions[v]))
                Await(new Waiting(leaf.Table, defines, _sources.Depth(leaf.Table, defines)), _waiting.Count);
        }
    }

    public void Run()
    {
        SumOutLastFunctions();
        while (!_tables.Empty)
        {
            NoteChanges();
            var variable = CheapestVariable(out var variableCost);
            var waiting = CheapestWaiting(out var waitingCost);
            Array.Clear(_tables.Stale);
            if (variable < 0 && waiting is null)
                return;
            if (waiting is not null && (variable < 0 || waitingCost < variableCost))
                Absorb(waiting);
            else
                Close(variable);
        }
    }

    private void Await(Waiting w, int place)
    {
        _waiting.Insert(place, w);
        foreach (var v in w.Table.Scope)
            _waitingOf[v]++;
    }

    private void Release(Waiting w)
    {
        _waiting.Remove(w);
        foreach (var v in w.Table.Scope)
            _waitingOf[v]--;
    }

    /// <summary>A function that nothing reads any more says something about its parents only: sum it out of its own table.</summary>
    private void SumOutLastFunctions()
    {
        for (var changed = true; changed;)
        {
            changed = false;
            for (var i = 0; i < _waiting.Count && !_tables.Empty; i++)
            {
                var w = _waiting[i];
                if (w.Defines < 0 || _tables.IsKept(w.Defines) || _tables.Of[w.Defines].Count > 1)
                    continue;
                Release(w);
                var rest = _tables.Join(w.Table, null);
                if (Array.Exists(rest.Scope, v => _sources.Functions[v]))
                    Await(new Waiting(rest, -1, w.Depth), i);
                // Its parents may have been read by nothing else.
                changed = true;
            }
        }
    }

    /// <summary>A variable's cost changes when any table that has it lost or gained a neighbour.</summary>
    private void NoteChanges()
    {
        Array.Clear(_changed);
        for (var v = 0; v < _changed.Length; v++)
        {
            if (!_tables.Stale[v])
                continue;
            _changed[v] = true;
            foreach (var table in _tables.Of[v])
            {
                foreach (var u in table.Scope)
                    _changed[u] = true;
            }
        }
    }

    private int CheapestVariable(out double cost)
    {
        var best = -1;
        cost = double.PositiveInfinity;
        for (var v = 0; v < _cost.Length; v++)
        {
            if (_tables.Of[v].Count == 0 || _tables.IsKept(v))
                continue;
            if (_changed[v])
                _cost[v] = Gather(v) ? _tables.Estimate(_bucket, out _) + (_sources.Functions[v] ? 0 : Surcharge()) : double.PositiveInfinity;
            if (_cost[v] >= cost)
                continue;
            cost = _cost[v];
            best = v;
        }

        return best;
    }

    private Waiting? CheapestWaiting(out double cost)
    {
        _lowest.Clear();
        foreach (var w in _waiting)
        {
            if (!w.Known || Array.Exists(w.Table.Scope, v => _tables.Stale[v]))
                Estimate(w);
            if (w.Only is not null && (!_lowest.TryGetValue(w.Only, out var depth) || w.Depth < depth))
                _lowest[w.Only] = w.Depth;
        }

        Waiting? best = null;
        cost = double.PositiveInfinity;
        foreach (var w in _waiting)
        {
            // Copies of a chain in one table advance together: one that runs ahead leaves its uncertain nodes open behind it.
            if (w.Cost >= cost || (w.Only is not null && _lowest[w.Only] < w.Depth))
                continue;
            cost = w.Cost;
            best = w;
        }

        return best;
    }

    private void Estimate(Waiting w)
    {
        w.Known = true;
        w.Only = null;
        w.Cost = double.PositiveInfinity;
        if (!Gather(w))
            return;
        w.Only = _bucket.Count == 2 ? _bucket[1] : null;
        if (_bucket.Count > 2)
            _held.LeaveHubs(_bucket);
        w.Cost = _tables.Estimate(_bucket, out _) + Opened(w) + (_bucket.Count > 2 ? Merging : 0);
    }

    /// <summary>Collects the table and whatever owns the functions it reads; false when one has no owner yet.</summary>
    private bool Gather(Waiting w)
    {
        _bucket.Clear();
        _bucket.Add(w.Table);
        return GatherRead(w);
    }

    private bool GatherRead(Waiting w)
    {
        foreach (var v in w.Table.Scope)
        {
            if (!_sources.Functions[v] || v == w.Defines)
                continue;
            if (_held.Owner(v) is not { } owner)
                return false;
            if (!_bucket.Contains(owner))
                _bucket.Add(owner);
        }

        return true;
    }

    /// <summary>
    /// Collects every table with the variable in it, and what those that wait read; false while something is missing. A
    /// function is summed out only when nothing waits for it and at most one of its tables is waited for otherwise.
    /// </summary>
    private bool Gather(int variable)
    {
        _bucket.Clear();
        _bucket.AddRange(_tables.Of[variable]);
        if (_sources.Functions[variable])
            return _waitingOf[variable] == 0 && _bucket.FindAll(IsAwaited).Count <= 1;
        if (_waitingOf[variable] == 0)
            return true;
        foreach (var w in _waiting)
        {
            if (w.Table.Covers(variable) && !GatherRead(w))
                return false;
        }

        return true;
    }

    private bool IsAwaited(Table table) => Array.Exists(table.Scope, v => _waitingOf[v] > 0 && _held.Owns(table, v));

    /// <summary>Bits of uncertain nodes that joining this table would open in what owns the functions it reads.</summary>
    private double Opened(Waiting w)
    {
        var bits = 0.0;
        foreach (var v in w.Table.Scope)
        {
            if (!_sources.Functions[v] && !_bucket.Exists(t => t != w.Table && t.Covers(v)))
                bits += _tables.LogStates(v);
        }

        return bits;
    }

    private double Surcharge()
    {
        ulong[]? all = null;
        var bits = 0.0;
        foreach (var table in _bucket)
        {
            ulong[]? mine = null;
            foreach (var v in table.Scope)
            {
                if (_held.Owns(table, v))
                    _sources.Unite(ref mine, v);
            }

            if (mine is null)
                continue;
            if (all is null)
            {
                all = mine;
                continue;
            }

            bits += Sources.Overlap(all, mine) < Alike ? Strangers : 0;
            Sources.Unite(all, mine);
        }

        return bits;
    }

    private void Absorb(Waiting w)
    {
        Gather(w);
        Release(w);
        if (_bucket.Count > 2)
            _held.LeaveHubs(_bucket);
        _held.Join([.. _bucket], [w.Defines]);
    }

    private void Close(int variable)
    {
        Gather(variable);
        var defined = new List<int>();
        foreach (var w in _waiting.FindAll(w => _bucket.Contains(w.Table)))
        {
            Release(w);
            defined.Add(w.Defines);
        }

        _held.Join([.. _bucket], defined);
    }

    /// <summary>A table that waits for the functions it reads.</summary>
    private sealed class Waiting(Table table, int defines, int depth)
    {
        public Table Table { get; } = table;

        /// <summary>The function this table defines, or -1.</summary>
        public int Defines { get; } = defines;

        public int Depth { get; } = depth;

        public bool Known { get; set; }

        /// <summary>Log2 of the estimated rows of its join, with surcharges; infinite while something it reads is missing.</summary>
        public double Cost { get; set; }

        /// <summary>The one table that owns all it reads, or null.</summary>
        public Table? Only { get; set; }
    }
}
