namespace Undercowl.Knowledge;

/// <summary>
/// What follows from the conditions in a given set-up: a level out of an ordered list, best first, per cylinder or for the
/// whole engine. It says what combines how; the ways of combining are <see cref="Combination"/>.
/// </summary>
public sealed record Quantity
{
    public required string Id { get; init; }

    public required string Name { get; init; }

    public required QuantityScope Per { get; init; }

    /// <summary>At most four, best first.</summary>
    public required IReadOnlyList<string> Levels { get; init; }

    public required Combination Combine { get; init; }

    public IReadOnlyList<QuantityInput> Inputs { get; init => field = value ?? []; } = [];

    /// <summary>For <see cref="Combination.Table"/>: the first row that matches gives the level.</summary>
    public IReadOnlyList<TableRow> Rows { get; init => field = value ?? []; } = [];

    /// <summary>What a level amounts to in a unit (kilovolts, megohms, millimetres), used by physics.</summary>
    public IReadOnlyList<LevelNumber> Numbers { get; init => field = value ?? []; } = [];

    /// <summary>Numbers of a physics combination that are not a level's.</summary>
    public IReadOnlyList<Parameter> Parameters { get; init => field = value ?? []; } = [];
}

public enum QuantityScope
{
    Cyl,
    Engine,
}

/// <summary>The ways of combining, all that the code knows.</summary>
public enum Combination
{
    /// <summary>The worst level among the conditions' effects and the inputs.</summary>
    WorstOf,

    /// <summary>Two levels, the second is yes: yes when any effect or input is.</summary>
    Any,

    /// <summary>Two levels, the second is yes: yes when all inputs are.</summary>
    All,

    /// <summary>First matching row over the inputs.</summary>
    Table,

    /// <summary>Over the cylinders: all at the first level, one not, several not, none. Exactly four levels.</summary>
    CountFold,

    /// <summary>Available against required voltage at the plug, in the cylinder; inputs: available, shunt, gap.</summary>
    SparkInCylinder,

    /// <summary>Available against required voltage at a plug laid open to the air; inputs: available, shunt, gap.</summary>
    SparkInAir,
}

/// <summary>A quantity that feeds another, level by level: by <see cref="Map"/>, else by equal names, else the best level.</summary>
public sealed record QuantityInput
{
    public required string Quantity { get; init; }

    public Dictionary<string, string> Map { get; init => field = value ?? []; } = [];

    public Only Only { get; init => field = value ?? []; } = [];
}

public sealed record TableRow
{
    /// <summary>Input quantity to the levels in which this row holds; an input not named may have any. Empty: otherwise.</summary>
    public Dictionary<string, OneOrMore> When { get; init => field = value ?? []; } = [];

    public required string Is { get; init; }
}

/// <summary>A level's value in a unit, for the layouts that <see cref="Only"/> admits; the first that holds counts.</summary>
public sealed record LevelNumber
{
    public required string Level { get; init; }

    public required double Value { get; init; }

    public required string Unit { get; init; }

    public required string Source { get; init; }

    public Only Only { get; init => field = value ?? []; } = [];
}

/// <summary>A named number with unit and source; the first whose <see cref="Only"/> holds counts.</summary>
public sealed record Parameter
{
    public required string Name { get; init; }

    public required double Value { get; init; }

    public required string Unit { get; init; }

    public required string Source { get; init; }

    public Only Only { get; init => field = value ?? []; } = [];
}
