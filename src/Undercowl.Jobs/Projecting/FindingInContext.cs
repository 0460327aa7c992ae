namespace Undercowl.Jobs;

/// <summary>An entry with its body in hand.</summary>
public sealed record Said<TBody>(Entry Entry, TBody Body)
    where TBody : EntryBody
{
    public EntryId Id => Entry.Id;
}

/// <summary>
/// A finding with what had been done to the engine when it was taken, as far as the log can tell: the live entries
/// among its causal ancestors, each list in canonical order. What another device recorded independently is not in it.
/// </summary>
/// <param name="Entry">The finding's entry.</param>
/// <param name="Body">The finding.</param>
/// <param name="Swaps">Swaps made before it.</param>
/// <param name="Remedies">Remedies done before it; what came of each is told by <see cref="Projection.ResultOf"/>.</param>
/// <param name="SetUpChanges">Changes of the engine as it stands before it.</param>
/// <param name="Occasions">Occasions begun before it, the current one last.</param>
public sealed record FindingInContext(
    Entry Entry,
    Finding Body,
    IReadOnlyList<Said<Swap>> Swaps,
    IReadOnlyList<Said<Remedy>> Remedies,
    IReadOnlyList<Said<SetUpChange>> SetUpChanges,
    IReadOnlyList<Said<Occasion>> Occasions)
{
    public EntryId Id => Entry.Id;
}
