namespace Undercowl.Jobs;

/// <summary>
/// Two entries carry one id and different bytes. Neither copy can be trusted over the other by a program, so
/// nothing is merged. It does not mean that two people entered different things: those have different ids.
/// </summary>
public sealed class JobConflictException(Entry ours, Entry theirs) : JobException(
    $"Entry {ours.Id} exists in two versions: one of the copies was changed after it was recorded.",
    "Find the copy that was edited by hand and take that line from the other copy, then merge again.")
{
    /// <summary>The id that both entries carry.</summary>
    public EntryId Id => Ours.Id;

    /// <summary>The entry of the job that was being merged into.</summary>
    public Entry Ours { get; } = ours;

    /// <summary>The entry that was to be added.</summary>
    public Entry Theirs { get; } = theirs;
}
