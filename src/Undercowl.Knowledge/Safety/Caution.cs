namespace Undercowl.Knowledge;

/// <summary>A warning shown before the steps it belongs to, and acknowledged once per job and set-up.</summary>
public sealed record Caution
{
    public required string Id { get; init; }

    public required string Text { get; init; }

    public required string Source { get; init; }

    /// <summary>The danger it warns of: whatever shows the caution must carry that hazard too, so that interlocks withhold it. Null: none.</summary>
    public string? Hazard { get; init; }
}
