namespace Undercowl.Knowledge;

/// <summary>
/// A question of the intake interview. It costs nothing and can be put by phone; its answer is a reading of what befell the
/// engine, or of a quantity as the engine came in, where <see cref="Tells"/> says so.
/// </summary>
public sealed record IntakeQuestion
{
    public required string Id { get; init; }

    public required string Ask { get; init; }

    public required IReadOnlyList<Option> Answers { get; init; }

    /// <summary>
    /// True when several answers may hold at once: each that was given is then a fact of its own, whatever else was answered. Else
    /// the last answer given counts.
    /// </summary>
    public bool Several { get; init; }

    /// <summary>Answer to its chance where nothing is the case of what the question tells; sums to 1. Empty: the answer is kept and tells nothing.</summary>
    public Dictionary<string, double> Usually { get; init => field = value ?? []; } = [];

    /// <summary>Source of <see cref="Usually"/>.</summary>
    public string? Source { get; init; }

    public IReadOnlyList<Telling> Tells { get; init => field = value ?? []; } = [];
}

/// <summary>
/// What the answers say of one common cause or quantity. Where several are the case, their rows are multiplied as ratios to
/// <see cref="IntakeQuestion.Usually"/>, and scaled to sum to 1 where the answers exclude each other.
/// </summary>
public sealed record Telling
{
    public string? CommonCause { get; init; }

    /// <summary>A quantity of the whole engine, in the set-up in which the complaint shows.</summary>
    public string? Quantity { get; init; }

    /// <summary>
    /// Level to answer to chance; each row sums to 1. For a common cause the level is <c>yes</c>; for a quantity any but the best. A
    /// level not named is as usual.
    /// </summary>
    public required Dictionary<string, Dictionary<string, double>> Given { get; init; }

    public required string Source { get; init; }
}
