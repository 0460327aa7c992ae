namespace Undercowl.Knowledge;

/// <summary>
/// A generic range for a measured item, used only until the engine's own is entered; verdicts made on it say so.
/// One bound may be missing: a floor has only <see cref="Low"/>.
/// </summary>
public sealed record Spec
{
    public required string Item { get; init; }

    public required string Name { get; init; }

    public required string Unit { get; init; }

    public double? Low { get; init; }

    public double? High { get; init; }

    public required string Source { get; init; }

    public Only Only { get; init => field = value ?? []; } = [];
}
