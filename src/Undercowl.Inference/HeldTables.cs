namespace Undercowl.Inference;

/// <summary>
/// Which table owns each function so far: the one into which its definition was multiplied, so that all joint states in it
/// can really occur. Joins tables so that this stays true.
/// </summary>
internal sealed class HeldTables(TableSet tables, Sources sources)
{
    private readonly Table?[] _owner = new Table?[tables.Of.Length];

    /// <summary>The table that owns this function, or null when its definition is still waiting.</summary>
    public Table? Owner(int function) => _owner[function];

    public bool Owns(Table table, int v) => sources.Functions[v] && _owner[v] == table;

    /// <summary>
    /// Joins these and makes the result own what they owned and what is newly <paramref name="defined"/>. Where they have
    /// functions open that another table owns, the joint states that can occur there are multiplied in as ones: that owner
    /// will be multiplied in later anyway, and is zero everywhere else.
    /// </summary>
    public Table Join(List<Table> bucket, List<int> defined)
    {
        List<Table> all = [.. bucket];
        all.AddRange(Guides(bucket));
        var joined = all.Count == 1 ? tables.Join(all[0], null) : tables.JoinAll(all);
        foreach (var v in joined.Scope)
        {
            if (sources.Functions[v] && (defined.Contains(v) || (_owner[v] is { } owner && bucket.Contains(owner))))
                _owner[v] = joined;
        }

        return joined;
    }

    /// <summary>
    /// Of the tables to be joined to the first one, takes away those that others need as well: the rest goes on with their
    /// functions open, under guidance. When all are needed elsewhere, the one least needed stays.
    /// </summary>
    public void LeaveHubs(List<Table> bucket)
    {
        var hubs = bucket.FindAll(t => t != bucket[0] && IsHub(t, bucket));
        if (hubs.Count == bucket.Count - 1)
        {
            var fewest = int.MaxValue;
            var main = hubs[0];
            foreach (var table in hubs)
            {
                if (Readers(table) is var readers && readers >= fewest)
                    continue;
                fewest = readers;
                main = table;
            }

            hubs.Remove(main);
        }

        bucket.RemoveAll(hubs.Contains);
    }

    private bool IsHub(Table table, List<Table> bucket) =>
        Array.Exists(bucket[0].Scope, v => Owns(table, v) && tables.Of[v].Exists(o => !bucket.Contains(o)));

    /// <summary>How many tables have functions that this one owns.</summary>
    private int Readers(Table table)
    {
        var readers = new HashSet<Table>();
        foreach (var v in table.Scope)
        {
            if (Owns(table, v))
                readers.UnionWith(tables.Of[v]);
        }

        return readers.Count;
    }

    private List<Table> Guides(List<Table> bucket)
    {
        var open = new List<(Table Owner, List<int> Functions)>();
        foreach (var table in bucket)
        {
            foreach (var v in table.Scope)
            {
                if (!sources.Functions[v] || _owner[v] is not { } owner || bucket.Contains(owner))
                    continue;
                var i = open.FindIndex(o => o.Owner == owner);
                if (i < 0)
                    open.Add((owner, [v]));
                else if (!open[i].Functions.Contains(v))
                    open[i].Functions.Add(v);
            }
        }

        var guides = new List<Table>();
        foreach (var (owner, functions) in open)
        {
            if (functions.Count > 1 && !bucket.Exists(t => functions.TrueForAll(t.Covers)))
                guides.Add(tables.Project(owner, [.. functions]));
        }

        return guides;
    }
}
