namespace Undercowl.Jobs.Tests.Projecting;

/// <summary>The projection done the obvious way: ancestors by walking parents, liveness by its definition.</summary>
internal sealed class SlowProjection(Job job)
{
    public bool Precedes(EntryId earlier, EntryId later)
    {
        var seen = new HashSet<EntryId>();
        var open = new Stack<EntryId>(job.Find(later)!.Parents);
        while (open.TryPop(out var id))
        {
            if (id == earlier)
                return true;
            if (seen.Add(id) && job.Find(id) is { } entry)
            {
                foreach (var parent in entry.Parents)
                    open.Push(parent);
            }
        }

        return false;
    }

    /// <summary>An entry holds unless a withdrawal that holds, and that it precedes, names it.</summary>
    public bool Holds(Entry entry, EntryId? also = null) => entry.Id != also && !job.Entries.Any(
        other => other.Body is Withdrawn withdrawn && withdrawn.Entry == entry.Id && Precedes(entry.Id, other.Id) && Holds(other, also));

    public IEnumerable<EntryId> Behind<TBody>(Entry finding, EntryId? also = null)
        where TBody : EntryBody =>
        job.Entries.Where(entry => entry.Body is TBody && Holds(entry, also) && Precedes(entry.Id, finding.Id)).Select(entry => entry.Id);

    public IEnumerable<EntryId> Reinterpreted(EntryId withdraw) => job.Entries
        .Where(entry => entry.Body is Finding && Holds(entry) && Holds(entry, withdraw))
        .Where(entry => !Behind<Swap>(entry).SequenceEqual(Behind<Swap>(entry, withdraw)) || !Behind<Remedy>(entry).SequenceEqual(Behind<Remedy>(entry, withdraw)))
        .Select(entry => entry.Id);
}
