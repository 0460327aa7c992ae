namespace Undercowl.Knowledge;

/// <summary>Where numbers come from: a publication, the common practice of the trade, memory, or an estimate of ours.</summary>
public sealed record Source
{
    public required string Id { get; init; }

    public required SourceKind Kind { get; init; }

    /// <summary>Author or body, title, edition and table or page; for the other kinds, what was judged and on what grounds.</summary>
    public required string Cite { get; init; }

    /// <summary>How far the odds of this source's chances may be off: a factor of 1 or more, either way. Null where nothing is said, as for most publications.</summary>
    public double? Odds { get; init; }

    /// <summary>How far its other numbers (minutes, prices, volts) may be off: a factor of 1 or more, either way. Null where nothing is said.</summary>
    public double? Times { get; init; }
}

public enum SourceKind
{
    Publication,
    CommonPractice,
    FromMemory,
    Estimate,
}
