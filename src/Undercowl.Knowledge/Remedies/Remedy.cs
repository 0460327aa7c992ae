namespace Undercowl.Knowledge;

/// <summary>An action that changes conditions of one part, with its minutes, parts, and chance of not curing.</summary>
public sealed record Remedy
{
    public required string Id { get; init; }

    public required int Revision { get; init; }

    public required string Name { get; init; }

    /// <summary>The part kind acted on, at the remedy's place.</summary>
    public required string Part { get; init; }

    public Only Only { get; init => field = value ?? []; } = [];

    /// <summary>True: another part takes its place, and all its aspects are fresh. False: only <see cref="Cures"/> change.</summary>
    public bool Replaces { get; init; }

    /// <summary>For a replacement: chance (0 to 1) that an aspect of the new part is itself bad.</summary>
    public double? NewPartBad { get; init; }

    public IReadOnlyList<Cure> Cures { get; init => field = value ?? []; } = [];

    public required double Minutes { get; init; }

    /// <summary>Price of what is fitted, in the currency of the shop's rate.</summary>
    public required double Parts { get; init; }

    public required string Source { get; init; }

    /// <summary>Dangers of the work, on which an interlock withholds it.</summary>
    public IReadOnlyList<string> Hazards { get; init => field = value ?? []; } = [];

    public IReadOnlyList<string> Cautions { get; init => field = value ?? []; } = [];

    public IReadOnlyList<string> Steps { get; init => field = value ?? []; } = [];

    /// <summary>What the work does that reopens a question of safety, such as fuel work.</summary>
    public IReadOnlyList<string> Does { get; init => field = value ?? []; } = [];

    /// <summary>Conditions of lifting an interlock that the work itself brings about, so that it need not wait for them.</summary>
    public IReadOnlyList<string> Meets { get; init => field = value ?? []; } = [];

    public string? Cluster { get; init; }

    /// <summary>What helps the work where the engine lacks what that lifts; null for nothing.</summary>
    public Help? HelpedBy { get; init; }
}

/// <summary>A state of the set-up, brought about before the work that it helps.</summary>
public sealed record Help
{
    /// <summary>A key of the set-up that is one for the whole engine.</summary>
    public required string SetUp { get; init; }

    /// <summary>Its value: one that lifts a quantity, takes minutes and is undone after.</summary>
    public required string Value { get; init; }

    public IReadOnlyList<string> Tools { get; init => field = value ?? []; } = [];
}

/// <summary>Conditions of an aspect that an action mends, and the chance (0 to 1) that it does not.</summary>
public sealed record Cure
{
    public required string Aspect { get; init; }

    /// <summary>Another part kind that the work mends besides, wherever such a part serves a cylinder of the part acted on; null: the part acted on.</summary>
    public string? Part { get; init; }

    /// <summary>The conditions cured; empty: all.</summary>
    public IReadOnlyList<string> Conditions { get; init => field = value ?? []; } = [];

    public required double NotCured { get; init; }
}
