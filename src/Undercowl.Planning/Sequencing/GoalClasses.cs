namespace Undercowl.Planning.Sequencing;

/// <summary>
/// Hypotheses that ask for the same components to be mended, taken together: for acting, only the weight of such a class
/// matters. Class j's components are <c>Member[Start[j]..Start[j+1]]</c>, ascending.
/// </summary>
internal sealed class GoalClasses
{
    internal GoalClasses(HypothesisTable table)
    {
        int components = table.Components;
        ClassOf = new int[table.Weights.Length];
        Single = new int[components];
        Array.Fill(Single, -1);
        List<int> start = [0];
        List<int> member = [];
        Dictionary<int, List<int>> byHash = [];
        for (int h = 0; h < ClassOf.Length; h++)
        {
            ReadOnlySpan<bool> row = table.Broken.AsSpan(h * components, components);
            HashCode hash = default;
            for (int c = 0; c < components; c++)
            {
                if (row[c]) hash.Add(c);
            }

            // Equal hashes are only candidates: rows are compared in full, so a collision cannot merge two classes.
            if (!byHash.TryGetValue(hash.ToHashCode(), out List<int>? candidates)) byHash[hash.ToHashCode()] = candidates = [];
            int found = -1;
            foreach (int j in candidates)
            {
                if (Same(row, start[j], start[j + 1], member)) found = j;
            }

            if (found < 0)
            {
                found = start.Count - 1;
                candidates.Add(found);
                for (int c = 0; c < components; c++)
                {
                    if (row[c]) member.Add(c);
                }

                start.Add(member.Count);
                int size = start[found + 1] - start[found];
                if (size == 0) Met = found;
                if (size == 1) Single[member[^1]] = found;
            }

            ClassOf[h] = found;
        }

        Start = [.. start];
        Member = [.. member];
        (EntryStart, Entry, EntryClass) = Transpose(components);
    }

    /// <summary>Number of classes.</summary>
    internal int Count => Start.Length - 1;

    /// <summary>The class of each hypothesis.</summary>
    internal int[] ClassOf { get; }

    internal int[] Start { get; }

    internal int[] Member { get; }

    /// <summary>For each component, the class in which it alone is broken, or -1.</summary>
    internal int[] Single { get; }

    /// <summary>The class in which nothing is broken, or -1.</summary>
    internal int Met { get; } = -1;

    /// <summary>
    /// For each component c, <c>Entry[EntryStart[c]..EntryStart[c+1]]</c> are its places in <see cref="Member"/> within
    /// classes of two or more, and <see cref="EntryClass"/> the classes they belong to.
    /// </summary>
    internal int[] EntryStart { get; }

    internal int[] Entry { get; }

    internal int[] EntryClass { get; }

    private static bool Same(ReadOnlySpan<bool> row, int from, int to, List<int> member)
    {
        int at = from;
        for (int c = 0; c < row.Length; c++)
        {
            if (!row[c]) continue;
            if (at == to || member[at] != c) return false;
            at++;
        }

        return at == to;
    }

    private (int[] Start, int[] Entry, int[] Class) Transpose(int components)
    {
        List<int>[] entries = new List<int>[components];
        for (int c = 0; c < components; c++) entries[c] = [];
        int[] classOfEntry = new int[Member.Length];
        for (int j = 0; j < Count; j++)
        {
            bool several = Start[j + 1] - Start[j] > 1;
            for (int e = Start[j]; e < Start[j + 1]; e++)
            {
                classOfEntry[e] = j;
                if (several) entries[Member[e]].Add(e);
            }
        }

        int[] start = new int[components + 1];
        for (int c = 0; c < components; c++) start[c + 1] = start[c] + entries[c].Count;
        int[] entry = [.. entries.SelectMany(list => list)];
        return (start, entry, [.. entry.Select(e => classOfEntry[e])]);
    }
}
