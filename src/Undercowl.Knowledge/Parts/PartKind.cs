namespace Undercowl.Knowledge;

/// <summary>
/// A kind of part, such as an ignition coil: in which respects it can be good or bad, and what follows. Not a part at a
/// place; a layout puts parts of a kind at places.
/// </summary>
public sealed record PartKind
{
    public required string Id { get; init; }

    public required string Name { get; init; }

    /// <summary>The path that it lies on, for showing the engine; it bears on no belief.</summary>
    public required PartPath Path { get; init; }

    /// <summary>True when two like parts can trade places on the engine, so that a fault can be seen to move.</summary>
    public bool Swappable { get; init; }

    public IReadOnlyList<Aspect> Aspects { get; init => field = value ?? []; } = [];
}

/// <summary>
/// One respect in which a part can be good or bad: one hidden node with exclusive conditions. The condition <c>sound</c>
/// is always there, first, and takes the probability that the listed faults leave.
/// </summary>
public sealed record Aspect
{
    public required string Id { get; init; }

    public required string Name { get; init; }

    /// <summary>True: one such aspect for each cylinder that the part serves (one end of a coil, one output of a unit).</summary>
    public bool PerCylinder { get; init; }

    /// <summary>True for a state that does not last, such as liquid fuel in a cylinder: it belongs to the occasion.</summary>
    public bool Passing { get; init; }

    /// <summary>True when the condition is mostly the effect of something else (a deposit); shown, not ranked as a root.</summary>
    public bool Consequence { get; init; }

    public Only Only { get; init => field = value ?? []; } = [];

    public IReadOnlyList<Condition> Conditions { get; init => field = value ?? []; } = [];

    /// <summary>When present, the conditions' chances depend on a quantity as the engine came in; else their priors stand.</summary>
    public AspectGiven? Given { get; init; }
}

/// <summary>The chances of an aspect's faults given the level of a quantity, in the plain set-up, as found.</summary>
public sealed record AspectGiven
{
    public required string Quantity { get; init; }

    /// <summary>The set-up in which the quantity counts; empty is every key at its default.</summary>
    public Dictionary<string, string> SetUp { get; init => field = value ?? []; } = [];

    /// <summary>Level of the quantity, to fault, to probability (0 to 1); a fault not named has its prior.</summary>
    public Dictionary<string, Dictionary<string, double>> Rows { get; init => field = value ?? []; } = [];

    public required string Source { get; init; }
}

/// <summary>A fault: one of the exclusive conditions of an aspect other than sound.</summary>
public sealed record Condition
{
    public required string Id { get; init; }

    public required string Name { get; init; }

    /// <summary>Chance (0 to 1) that a part brought in with any complaint, or none, is in this condition.</summary>
    public required double Prior { get; init; }

    public required string Source { get; init; }

    public Only Only { get; init => field = value ?? []; } = [];

    /// <summary>Quantity to the level it is held at, at best, in every lane that the aspect serves.</summary>
    public Dictionary<string, string> Effects { get; init => field = value ?? []; } = [];

    /// <summary>Set-up keys and values in which the fault shows; empty: always.</summary>
    public Dictionary<string, OneOrMore> When { get; init => field = value ?? []; } = [];

    /// <summary>For a fault that comes and goes with no known trigger: chance (0 to 1) that it shows on an occasion.</summary>
    public double? Shows { get; init; }

    /// <summary>What the condition does to the engine if left alone; shown with it.</summary>
    public string? Warning { get; init; }
}
