namespace Undercowl.Knowledge;

/// <summary>Where numbers come from: a publication, the common practice of the trade, memory, or an estimate of ours.</summary>
public sealed record Source
{
    public required string Id { get; init; }

    public required SourceKind Kind { get; init; }

    /// <summary>Author or body, title, edition and table or page; for the other kinds, what was judged and on what grounds.</summary>
    public required string Cite { get; init; }
}

public enum SourceKind
{
    Publication,
    CommonPractice,
    FromMemory,
    Estimate,
}
