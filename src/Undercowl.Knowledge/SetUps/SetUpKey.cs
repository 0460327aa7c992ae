namespace Undercowl.Knowledge;

/// <summary>
/// One thing about the engine's state that a reading is taken in: what is disconnected, primed, oiled, removed, cranking or
/// running, cold or hot. In a job it is written <c>key</c> or <c>key@place</c>.
/// </summary>
public sealed record SetUpKey
{
    public required string Id { get; init; }

    public required string Name { get; init; }

    /// <summary>Per cylinder (written with a place) or for the whole engine.</summary>
    public required QuantityScope Per { get; init; }

    /// <summary>The value that holds when nothing is said; must be one of <see cref="Values"/>.</summary>
    public required string Default { get; init; }

    /// <summary>True when a changed value ends the occasion: what came and went may show or not afresh.</summary>
    public bool EndsOccasion { get; init; }

    public required IReadOnlyList<SetUpValue> Values { get; init; }
}

/// <summary>A value of a set-up key and what it does to the graph: an intervention, not an observation.</summary>
public sealed record SetUpValue
{
    public required string Id { get; init; }

    public required string Name { get; init; }

    /// <summary>Part kinds whose conditions have no influence while this holds.</summary>
    public IReadOnlyList<string> Without { get; init => field = value ?? []; } = [];

    /// <summary>Quantity inputs that are cut: quantity to the input quantities it no longer hears.</summary>
    public Dictionary<string, OneOrMore> Cuts { get; init => field = value ?? []; } = [];

    /// <summary>Quantity to the level it is set to.</summary>
    public Dictionary<string, string> Sets { get; init => field = value ?? []; } = [];

    /// <summary>Quantity to the number of levels it is lifted by (not out of its last level).</summary>
    public Dictionary<string, int> Lifts { get; init => field = value ?? []; } = [];

    /// <summary>Part kinds in whose place a part known to be good sits; mostly sound, see <see cref="NotGood"/>.</summary>
    public IReadOnlyList<string> KnownGood { get; init => field = value ?? []; } = [];

    /// <summary>Chance (0 to 1) that the part known to be good is not; wanted with <see cref="KnownGood"/>.</summary>
    public double? NotGood { get; init; }

    /// <summary>
    /// Minutes to bring this state about, or to undo it; for states of heat, to reach this one. Null: part of the check's own.
    /// </summary>
    public double? Minutes { get; init; }

    /// <summary>Source of the numbers here; wanted when there are any.</summary>
    public string? Source { get; init; }

    /// <summary>When present, the state stays until undone, and this says how: it stands on the restore list.</summary>
    public string? Restore { get; init; }

    /// <summary>Dangers that arise in this state; interlocks withhold by them.</summary>
    public IReadOnlyList<string> Hazards { get; init => field = value ?? []; } = [];

    public IReadOnlyList<string> Cautions { get; init => field = value ?? []; } = [];

    /// <summary>Quantity levels without which this state cannot be reached: quantity to the levels that forbid it.</summary>
    public Dictionary<string, OneOrMore> Impossible { get; init => field = value ?? []; } = [];
}
