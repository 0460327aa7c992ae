namespace Undercowl.Knowledge;

/// <summary>
/// What an engine is made of: cylinders, attributes (strokes, ignition family, fuel system, start system) and which part
/// serves which cylinders. Not a make or model; its own specs come from its service manual.
/// </summary>
public sealed record EngineLayout
{
    public required string Id { get; init; }

    public required string Name { get; init; }

    public required int Cylinders { get; init; }

    public IReadOnlyList<int> FiringOrder { get; init => field = value ?? []; } = [];

    /// <summary>Named properties that knowledge may be restricted to.</summary>
    public Dictionary<string, string> Attributes { get; init => field = value ?? []; } = [];

    /// <summary>Bank letter to its cylinders.</summary>
    public Dictionary<string, IReadOnlyList<int>> Banks { get; init => field = value ?? []; } = [];

    public required IReadOnlyList<LayoutPart> Parts { get; init; }

    /// <summary>True for layouts that only tests use; not listed to the user.</summary>
    public bool TestOnly { get; init; }
}

/// <summary>Parts of one kind at one or more places; <c>each cyl</c> stands for every cylinder.</summary>
public sealed record LayoutPart
{
    public required string Part { get; init; }

    public required OneOrMore At { get; init; }
}
