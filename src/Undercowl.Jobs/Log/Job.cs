using System.Collections.Immutable;

namespace Undercowl.Jobs;

/// <summary>
/// One engine's visit: a set of entries, unchangeable, kept in memory. Adding and merging give a new one. What the
/// entries come to is for <see cref="Projection"/>, what is on disk for <see cref="JobFile"/>. Safe to share between threads.
/// </summary>
public sealed class Job
{
    private readonly ImmutableDictionary<EntryId, Entry> entries;
    private readonly ImmutableSortedSet<EntryId> heads;
    private readonly ImmutableHashSet<(EntryId Parent, EntryId Child)> missing;
    private readonly ImmutableDictionary<string, (long Sequence, EntryId Id)> devices;
    private readonly Lazy<Entry[]> order;

    private Job(
        ImmutableDictionary<EntryId, Entry> entries,
        ImmutableSortedSet<EntryId> heads,
        ImmutableHashSet<(EntryId Parent, EntryId Child)> missing,
        ImmutableDictionary<string, (long Sequence, EntryId Id)> devices)
    {
        (this.entries, this.heads, this.missing, this.devices) = (entries, heads, missing, devices);
        order = new Lazy<Entry[]>(Ordered);
    }

    /// <summary>The job without entries.</summary>
    public static Job Empty { get; } = new(
        ImmutableDictionary<EntryId, Entry>.Empty,
        [],
        ImmutableHashSet<(EntryId, EntryId)>.Empty,
        ImmutableDictionary<string, (long, EntryId)>.Empty.WithComparers(StringComparer.Ordinal));

    public int Count => entries.Count;

    /// <summary>All entries in canonical order: parents first, then by id.</summary>
    public IReadOnlyList<Entry> Entries => order.Value;

    /// <summary>The entries that no other follows, ascending: the parents of the next one.</summary>
    public IReadOnlyList<EntryId> Heads => heads;

    /// <summary>Parents that are named and not there, each with the entry that names it.</summary>
    public IReadOnlyCollection<(EntryId Parent, EntryId Child)> MissingParents => [.. missing.Order()];

    /// <summary>
    /// Reads JSON Lines. Never throws for what the bytes hold: a line that cannot be taken is listed with its number
    /// and what to do about it, and is not in the job.
    /// </summary>
    /// <param name="bytes">The whole log; empty gives the empty job.</param>
    /// <param name="source">The name to use in problems, mostly the file's.</param>
    public static JobReading Parse(ReadOnlyMemory<byte> bytes, string source = "") => JobParser.Parse(bytes, source);

    /// <summary>The set of these entries. Throws <see cref="JobConflictException"/> when two share an id and differ.</summary>
    public static Job Of(IEnumerable<Entry> entries) => Empty.WithAll(entries);

    public bool Contains(EntryId id) => entries.ContainsKey(id);

    public Entry? Find(EntryId id) => entries.GetValueOrDefault(id);

    /// <summary>This job and one more entry; the same job when it has it already.</summary>
    public Job With(Entry entry) => WithAll([entry]);

    /// <summary>
    /// The union. Merging any copies in any order gives the same entries and so the same bytes. Throws
    /// <see cref="JobConflictException"/> when one id has two contents; then nothing is merged.
    /// </summary>
    public Job Merge(Job other) => WithAll(other.entries.Values);

    /// <summary>The whole log in canonical order, every line ended by a line feed.</summary>
    public byte[] ToBytes()
    {
        var bytes = new byte[Entries.Sum(entry => entry.Line.Length + 1)];
        var at = 0;
        foreach (var entry in Entries)
        {
            entry.Line.Span.CopyTo(bytes.AsSpan(at));
            at += entry.Line.Length;
            bytes[at++] = (byte)'\n';
        }

        return bytes;
    }

    /// <summary>The highest count and the greatest id of a device in this job; zero and none for a device new to it.</summary>
    internal (long Sequence, EntryId Id) LastOf(string device) => devices.GetValueOrDefault(device);

    private Job WithAll(IEnumerable<Entry> added)
    {
        var all = entries.ToBuilder();
        var free = heads.ToBuilder();
        var lacking = missing.ToBuilder();
        var last = devices.ToBuilder();
        var namedBefore = lacking.Select(pair => pair.Parent).ToHashSet();
        var fresh = new List<Entry>();
        foreach (var entry in added)
        {
            if (all.TryGetValue(entry.Id, out var known))
            {
                if (!known.Equals(entry))
                    throw new JobConflictException(known, entry);
                continue;
            }

            all[entry.Id] = entry;
            fresh.Add(entry);
            var before = last.GetValueOrDefault(entry.Device);
            last[entry.Device] = (Math.Max(before.Sequence, entry.Sequence), before.Id > entry.Id ? before.Id : entry.Id);
        }

        if (fresh.Count == 0)
            return this;
        free.UnionWith(fresh.Select(entry => entry.Id));
        foreach (var entry in fresh)
        {
            free.ExceptWith(entry.Parents);
            foreach (var parent in entry.Parents)
            {
                if (!all.ContainsKey(parent))
                    lacking.Add((parent, entry.Id));
            }
        }

        // An older entry may have been waiting for one of the fresh ones: then that one is no head, and a circle is possible.
        var arrived = fresh.Exists(entry => namedBefore.Contains(entry.Id));
        if (arrived)
        {
            foreach (var pair in missing.Where(pair => all.ContainsKey(pair.Parent)))
            {
                lacking.Remove(pair);
                free.Remove(pair.Parent);
            }
        }

        var job = new Job(all.ToImmutable(), free.ToImmutable(), lacking.ToImmutable(), last.ToImmutable());
        if (arrived || fresh.Count > 1)
            _ = job.Entries;
        return job;
    }

    private Entry[] Ordered()
    {
        var sorted = CanonicalOrder.Of(entries, out var circular);
        return circular.Count == 0
            ? sorted
            : throw new JobException(
                $"Entry {circular[0].Id} follows itself by way of its parents.",
                "Parents were changed by hand in one of the copies: restore that line from another copy.");
    }
}
