namespace Undercowl.Knowledge;

/// <summary>
/// Something that befell the engine and hits several parts at once, such as months of standing: it did or it did not. It is no
/// fault itself and nothing mends it; it makes conditions likelier. What it does not name it leaves alone.
/// </summary>
public sealed record CommonCause
{
    public required string Id { get; init; }

    public required string Name { get; init; }

    public Only Only { get; init => field = value ?? []; } = [];

    /// <summary>Chance (0 to 1) that it befell an engine brought in with any complaint, or none.</summary>
    public required double Prior { get; init; }

    public required string Source { get; init; }

    /// <summary>
    /// True when it hits all that it bears on alike, so that what is seen of one tells of the others. Else each has it or not for
    /// itself: salt gets into one connector and not into the next.
    /// </summary>
    public bool Together { get; init; }

    public required IReadOnlyList<Likelier> Likelier { get; init; }

    /// <summary>How many times likelier it makes a condition of <c>kind.aspect</c>; 1 where it says nothing.</summary>
    public double TimesOf(string aspect, string condition) =>
        Likelier.FirstOrDefault(l => l.Aspect == aspect && l.Conditions.Contains(condition))?.Times ?? 1;
}

/// <summary>Conditions of an aspect that are likelier, on every part of that kind. Their priors stay what they are on average.</summary>
public sealed record Likelier
{
    /// <summary>Part kind and aspect, as <c>kind.aspect</c>.</summary>
    public required string Aspect { get; init; }

    /// <summary>The conditions meant; other faults of the aspect are as before.</summary>
    public required OneOrMore Conditions { get; init; }

    /// <summary>How many times likelier each is when this befell the engine than when it did not; above 0.</summary>
    public required double Times { get; init; }

    public required string Source { get; init; }
}
