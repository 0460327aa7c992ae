namespace Undercowl.Jobs;

/// <summary>
/// The one order of a set of entries: parents before children, and of those that are free the one with the smallest id
/// first (Kahn's method with a heap). It depends on the set alone, not on how it was put together.
/// </summary>
internal static class CanonicalOrder
{
    /// <param name="entries">The entries, in any order. Parents that are not among them count as absent.</param>
    /// <param name="circular">Entries that follow themselves over others, and those caught between; empty for an honest log.</param>
    public static Entry[] Of(IReadOnlyDictionary<EntryId, Entry> entries, out IReadOnlyList<Entry> circular)
    {
        var waiting = new Dictionary<EntryId, int>(entries.Count);
        var children = new Dictionary<EntryId, List<Entry>>(entries.Count);
        var free = new PriorityQueue<Entry, EntryId>(entries.Count);
        foreach (var entry in entries.Values)
        {
            var present = 0;
            foreach (var parent in entry.Parents)
            {
                if (!entries.ContainsKey(parent))
                    continue;
                present++;
                if (!children.TryGetValue(parent, out var list))
                    children[parent] = list = [];
                list.Add(entry);
            }

            waiting[entry.Id] = present;
            if (present == 0)
                free.Enqueue(entry, entry.Id);
        }

        var order = new List<Entry>(entries.Count);
        while (free.TryDequeue(out var entry, out _))
        {
            order.Add(entry);
            waiting.Remove(entry.Id);
            if (!children.TryGetValue(entry.Id, out var list))
                continue;
            foreach (var child in list)
            {
                if (--waiting[child.Id] == 0)
                    free.Enqueue(child, child.Id);
            }
        }

        circular = waiting.Count == 0 ? [] : OnCircles(entries, waiting.Keys, children);
        return [.. order];
    }

    // Of what was never free, drop again and again what nothing else waits for: descendants of a circle are not to blame.
    private static List<Entry> OnCircles(IReadOnlyDictionary<EntryId, Entry> entries, IEnumerable<EntryId> stuck, Dictionary<EntryId, List<Entry>> children)
    {
        var left = stuck.ToHashSet();
        while (left.RemoveWhere(id => !children.TryGetValue(id, out var list) || !list.Exists(child => left.Contains(child.Id))) > 0)
        {
        }

        return [.. left.Order().Select(id => entries[id])];
    }
}
