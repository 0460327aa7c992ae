using System.Collections.Immutable;

namespace Undercowl.Jobs;

/// <summary>
/// What a job's entries come to: which hold, what each finding has behind it, and what was said last on each subject.
/// Depends on the entries alone, so every copy projects alike. It judges nothing: no check, part or spec is known here.
/// </summary>
public sealed partial class Projection
{
    private readonly IReadOnlyList<Entry> entries;
    private readonly Dictionary<EntryId, int> indexOf;
    private readonly AncestorSets ancestors;
    private readonly int[] targets;
    private readonly int[] withdrawnBy;

    private Projection(Job job)
    {
        Job = job;
        entries = job.Entries;
        indexOf = new Dictionary<EntryId, int>(entries.Count);
        for (var i = 0; i < entries.Count; i++)
            indexOf[entries[i].Id] = i;
        ancestors = new AncestorSets([.. entries.Select(entry => ParentsOf(entry))]);
        (targets, WithoutEffect) = FindTargets();
        withdrawnBy = Liveness.WithdrawnBy(targets);
        Live = [.. entries.Where((_, i) => withdrawnBy[i] < 0)];
        Withdrawn = [.. entries.Index().Where(pair => withdrawnBy[pair.Index] >= 0).Select(pair => (pair.Item, entries[withdrawnBy[pair.Index]]))];
        Findings = FindContexts();
    }

    public Job Job { get; }

    /// <summary>The entries that hold, in canonical order. Withdrawals that hold are among them.</summary>
    public IReadOnlyList<Entry> Live { get; }

    /// <summary>The entries that were taken back, in canonical order, each with a withdrawal that holds.</summary>
    public IReadOnlyList<(Entry Entry, Entry By)> Withdrawn { get; }

    /// <summary>Withdrawals of entries that are not there or not among their ancestors: they take nothing back.</summary>
    public IReadOnlyList<Entry> WithoutEffect { get; }

    /// <summary>The findings that hold, in canonical order, each with what was done before it.</summary>
    public IReadOnlyList<FindingInContext> Findings { get; }

    /// <summary>The latest entries: the parents of the next one.</summary>
    public IReadOnlyList<EntryId> Heads => Job.Heads;

    public static Projection Of(Job job) => new(job);

    /// <summary>True when the entry is in the job and not taken back.</summary>
    public bool Holds(EntryId id) => indexOf.TryGetValue(id, out var i) && withdrawnBy[i] < 0;

    /// <summary>True when <paramref name="earlier"/> was known where <paramref name="later"/> was recorded. Throws when either is not in the job.</summary>
    public bool Precedes(EntryId earlier, EntryId later) => ancestors.Precedes(Index(earlier), Index(later));

    /// <summary>True for two different entries of which neither was known where the other was recorded.</summary>
    public bool Independent(EntryId one, EntryId other) => one != other && !Precedes(one, other) && !Precedes(other, one);

    /// <summary>
    /// The findings that would be read otherwise if an entry were withdrawn now: those that hold before and after, and
    /// have a swap or remedy behind them that would hold no longer, or again.
    /// </summary>
    public IReadOnlyList<FindingInContext> Reinterpreted(EntryId withdraw)
    {
        var after = Liveness.WithdrawnBy(targets, Index(withdraw));
        var flipped = new List<int>();
        for (var i = 0; i < after.Length; i++)
        {
            if (entries[i].Body is Swap or Remedy && after[i] < 0 != withdrawnBy[i] < 0)
                flipped.Add(i);
        }

        return [.. Findings.Where(finding => indexOf[finding.Id] is var at && after[at] < 0 && flipped.Exists(i => ancestors.Precedes(i, at)))];
    }

    /// <summary>The live entries of one kind, in canonical order.</summary>
    public IEnumerable<Said<TBody>> All<TBody>()
        where TBody : EntryBody
    {
        foreach (var entry in Live)
        {
            if (entry.Body is TBody body)
                yield return new Said<TBody>(entry, body);
        }
    }

    private int Index(EntryId id) => indexOf.TryGetValue(id, out var i)
        ? i
        : throw new JobException($"Entry {id} is not in this job.", "Name an entry of this job.");

    private int[] ParentsOf(Entry entry) => [.. entry.Parents.Where(indexOf.ContainsKey).Select(parent => indexOf[parent])];

    private (int[] Targets, ImmutableArray<Entry> WithoutEffect) FindTargets()
    {
        var found = new int[entries.Count];
        var idle = ImmutableArray.CreateBuilder<Entry>();
        for (var i = 0; i < found.Length; i++)
        {
            found[i] = -1;
            if (entries[i].Body is not Withdrawn withdrawn)
                continue;
            if (indexOf.TryGetValue(withdrawn.Entry, out var target) && ancestors.Precedes(target, i))
                found[i] = target;
            else
                idle.Add(entries[i]);
        }

        return (found, idle.ToImmutable());
    }

    private ImmutableArray<FindingInContext> FindContexts()
    {
        var swaps = new Behind<Swap>(this);
        var remedies = new Behind<Remedy>(this);
        var changes = new Behind<SetUpChange>(this);
        var occasions = new Behind<Occasion>(this);
        var findings = ImmutableArray.CreateBuilder<FindingInContext>();
        foreach (var (entry, body) in All<Finding>())
        {
            var at = indexOf[entry.Id];
            findings.Add(new FindingInContext(entry, body, swaps.Of(at), remedies.Of(at), changes.Of(at), occasions.Of(at)));
        }

        return findings.ToImmutable();
    }

    // Findings in a row mostly have the same things behind them; the list is then shared, not copied.
    private sealed class Behind<TBody>(Projection projection)
        where TBody : EntryBody
    {
        private readonly (int Index, Said<TBody> Said)[] all = [.. projection.All<TBody>().Select(said => (projection.indexOf[said.Id], said))];
        private Said<TBody>[] before = [];

        public Said<TBody>[] Of(int at)
        {
            var count = 0;
            var same = true;
            foreach (var (index, said) in all)
            {
                if (index >= at)
                    break;
                if (!projection.ancestors.Precedes(index, at))
                    continue;
                same = same && count < before.Length && ReferenceEquals(before[count], said);
                count++;
            }

            if (same && count == before.Length)
                return before;
            return before = [.. all.Where(pair => pair.Index < at && projection.ancestors.Precedes(pair.Index, at)).Select(pair => pair.Said)];
        }
    }
}
