namespace Undercowl.Knowledge;

/// <summary>A tool that readings are taken with; its own faults err for every place it is used at.</summary>
public sealed record Tool
{
    public required string Id { get; init; }

    public required string Name { get; init; }

    /// <summary>Electrode shape of a spark tester: needle, blunt-points, near-uniform, or sphere; null for other tools.</summary>
    public string? Shape { get; init; }

    /// <summary>True when nobody works without it; it is assumed at hand.</summary>
    public bool Usual { get; init; }

    /// <summary>
    /// A tool in whose place this one is sometimes used though it cannot do the work: for a check that asks for that tool and was done
    /// with this one, this one's faults count. Null for a tool in its own right.
    /// </summary>
    public string? InsteadOf { get; init; }

    /// <summary>Ohms that its own leads may put in or leave out, as a standard deviation; null for a tool that measures no resistance.</summary>
    public double? LeadOhms { get; init; }

    /// <summary>Source of the numbers here; wanted when there are any.</summary>
    public string? Source { get; init; }

    public IReadOnlyList<ToolAspect> Aspects { get; init => field = value ?? []; } = [];
}

public sealed record ToolAspect
{
    public required string Id { get; init; }

    public required string Name { get; init; }

    public required IReadOnlyList<ToolCondition> Conditions { get; init; }
}

/// <summary>A fault of a tool, and what it makes readings look like.</summary>
public sealed record ToolCondition
{
    public required string Id { get; init; }

    public required string Name { get; init; }

    public required double Prior { get; init; }

    public required string Source { get; init; }

    /// <summary>True: readings come out as if the quantity were at its last level, or the aspect open.</summary>
    public bool ReadsAsWorst { get; init; }
}

/// <summary>Who looked, and how far their word is doubted.</summary>
public sealed record Hand
{
    public required string Id { get; init; }

    public required string Name { get; init; }

    /// <summary>Chance (0 to 1) that the report has nothing to do with what was there.</summary>
    public required double Doubt { get; init; }

    public required string Source { get; init; }

    /// <summary>Hazards that this hand is never asked to meet.</summary>
    public IReadOnlyList<string> Spared { get; init => field = value ?? []; } = [];
}
