namespace Undercowl.Inference;

/// <summary>
/// Sums some of the tables of a set, given what is known of the rest: the front, in which the other variables of these tables are open.
/// A variable that only these tables have is eliminated, the one first that joins the fewest others, where those open in the front
/// do not count, as they stay open anyway; weighted, a pair counts its bits multiplied. Either way may be the better one by far. What shares several of them is multiplied over joint states that occur in the front alone.
/// </summary>
internal sealed class PartialSum(TableSet tables, RunningValues values, bool weighted)
{
    /// <summary>What was summed to a number.</summary>
    public List<Part> Numbers { get; } = [];

    /// <summary>Joins two parts, or sums one.</summary>
    public Part Join(Part a, Part? b)
    {
        var before = values.Exponent;
        var joined = tables.Join(a.Table, b?.Table);
        values.Evaluate();
        return new Part(joined, b is null ? a.Leaves : [.. a.Leaves, .. b.Leaves], a.Exponent + (b?.Exponent ?? 0) + values.Exponent - before);
    }

    /// <summary>
    /// Eliminates what can be, and leaves the result in the list. A variable whose tables are estimated to give more rows than 2 to
    /// the power of <paramref name="widest"/> is left alone.
    /// </summary>
    public void Run(List<Part> parts, Table? front, double widest)
    {
        var mine = parts.Select(p => p.Table).ToHashSet();
        var left = new HashSet<int>();
        while (!tables.Empty && Fewest(mine, left, front) is var v and >= 0)
        {
            if (tables.Estimate(tables.Of[v], out _) > widest)
            {
                left.Add(v);
                continue;
            }

            var bucket = parts.FindAll(p => p.Table.Covers(v));
            parts.RemoveAll(bucket.Contains);
            mine.ExceptWith(bucket.Select(p => p.Table));
            if (front is not null && Guide(bucket, front) is { } guide)
            {
                bucket.Add(new Part(guide, [], 0));
            }

            var joined = JoinAll(bucket);
            if (!tables.Empty && tables.Of[v].Count > 0)
            {
                joined = Join(joined, null);
            }

            if (joined.Table.Scope.Length == 0)
            {
                Numbers.Add(joined);
                continue;
            }

            parts.Add(joined);
            mine.Add(joined.Table);
        }
    }

    private Part JoinAll(List<Part> bucket)
    {
        if (bucket.Count == 1)
        {
            return Join(bucket[0], null);
        }

        while (bucket.Count > 1 && !tables.Empty)
        {
            var (first, second) = tables.CheapestPair(bucket.ConvertAll(p => p.Table));
            bucket[first] = Join(bucket[second], bucket[first]);
            bucket.RemoveAt(second);
        }

        return bucket[0];
    }

    private Table? Guide(List<Part> bucket, Table front)
    {
        int[] shared = [.. bucket.SelectMany(p => p.Table.Scope).Distinct().Where(front.Covers)];
        return shared.Length > 1 && !bucket.Exists(p => Array.TrueForAll(shared, p.Table.Covers)) ? tables.Project(front, shared) : null;
    }

    /// <summary>The variable that joins the fewest pairs of neighbours which are not joined yet; -1 when none is left.</summary>
    private int Fewest(HashSet<Table> mine, HashSet<int> left, Table? front)
    {
        var (best, least) = (-1, double.MaxValue);
        foreach (var v in mine.SelectMany(t => t.Scope).Distinct().Order())
        {
            if (!tables.IsKept(v) && !left.Contains(v) && tables.Of[v].TrueForAll(mine.Contains) && tables.Fill(v, weighted, front) is var joins && joins < least)
            {
                (best, least) = (v, joins);
            }
        }

        return best;
    }
}
