namespace Undercowl.Knowledge;

/// <summary>
/// A hard rule: while it is not clear, steps with its hazards are withheld. Unknown is not safe, so it starts closed when
/// <see cref="UntilKnown"/>; an event that opens the question again closes it until every condition of lifting is met.
/// </summary>
public sealed record Interlock
{
    public required string Id { get; init; }

    public required string Name { get; init; }

    /// <summary>Why, in words that the technician reads.</summary>
    public required string Reason { get; init; }

    public required string Source { get; init; }

    /// <summary>The hazards that are withheld.</summary>
    public required IReadOnlyList<string> Withholds { get; init; }

    /// <summary>True: withheld from the start, until one of <see cref="ClearedBy"/> is recorded.</summary>
    public bool UntilKnown { get; init; }

    public IReadOnlyList<InterlockEvent> ClearedBy { get; init => field = value ?? []; } = [];

    public IReadOnlyList<InterlockEvent> OpenedBy { get; init => field = value ?? []; } = [];

    /// <summary>What must be stated, each after the last opening, before it is lifted.</summary>
    public IReadOnlyList<Option> Lift { get; init => field = value ?? []; } = [];

    /// <summary>Where smelling states one of the conditions; null when smelling states none.</summary>
    public Smelling? Smelt { get; init; }

    /// <summary>The safe thing to do instead.</summary>
    public string? Instead { get; init; }
}

/// <summary>Places that are smelt at after ventilating. When all were found clear since the last opening, a condition of lifting is stated.</summary>
public sealed record Smelling
{
    /// <summary>One of <see cref="Interlock.Lift"/>.</summary>
    public required string States { get; init; }

    public required IReadOnlyList<string> Places { get; init; }
}

/// <summary>A recorded thing that opens or clears an interlock: a check's choice, a deed of a remedy, or an intake answer.</summary>
public sealed record InterlockEvent
{
    public string? Check { get; init; }

    public OneOrMore? Choice { get; init; }

    /// <summary>A deed named in a remedy's <see cref="Remedy.Does"/>.</summary>
    public string? Does { get; init; }

    public string? Question { get; init; }

    public OneOrMore? Answer { get; init; }
}
