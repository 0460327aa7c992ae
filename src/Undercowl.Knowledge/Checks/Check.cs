namespace Undercowl.Knowledge;

/// <summary>
/// A procedure that yields a reading: where, in which set-up, with what tools, minutes and cautions, and how the reading
/// depends on a quantity or on an aspect of a part.
/// </summary>
public sealed record Check
{
    public required string Id { get; init; }

    /// <summary>Raised when the procedure or the meaning of its readings changes; findings name it.</summary>
    public required int Revision { get; init; }

    public required string Name { get; init; }

    /// <summary>The question put to the technician when the procedure is done.</summary>
    public required string Ask { get; init; }

    /// <summary><c>engine</c>, <c>cyl</c> (once per cylinder), or a part kind (once per part of it in the layout).</summary>
    public required string At { get; init; }

    public Only Only { get; init => field = value ?? []; } = [];

    /// <summary>Set-up the procedure brings about; a key ending in <c>@here</c> is set at the check's place.</summary>
    public Dictionary<string, string> SetUp { get; init => field = value ?? []; } = [];

    /// <summary>Settings of the tool that the reading depends on, such as a tester gap.</summary>
    public IReadOnlyList<Setting> Settings { get; init => field = value ?? []; } = [];

    public IReadOnlyList<string> Tools { get; init => field = value ?? []; } = [];

    public required double Minutes { get; init; }

    /// <summary>Source of the minutes.</summary>
    public required string Source { get; init; }

    /// <summary>
    /// Source of the practice by which it comes before anything is measured or taken apart, or, where it proves a tool, before what that tool read is
    /// believed; null for all that has no such place.
    /// </summary>
    public string? FirstBy { get; init; }

    /// <summary>Checks of one cluster share their preparation; empty for none.</summary>
    public string? Cluster { get; init; }

    /// <summary>Minutes when the check before was of its cluster; null: the usual share of <see cref="Minutes"/>. For work that shares little of its preparation.</summary>
    public double? Again { get; init; }

    public IReadOnlyList<string> Cautions { get; init => field = value ?? []; } = [];

    /// <summary>Dangers of the procedure itself, besides those of its set-up.</summary>
    public IReadOnlyList<string> Hazards { get; init => field = value ?? []; } = [];

    public IReadOnlyList<string> Steps { get; init => field = value ?? []; } = [];

    /// <summary>Part kinds that the procedure handles: a fault that comes and goes may change by it.</summary>
    public IReadOnlyList<string> Handles { get; init => field = value ?? []; } = [];

    /// <summary>A swappable part kind: the procedure first exchanges the part here with a like one, which is recorded as a swap.</summary>
    public string? Swap { get; init; }

    /// <summary>Choices, when the reading is one; empty for a number.</summary>
    public IReadOnlyList<Option> Choices { get; init => field = value ?? []; } = [];

    /// <summary>How <c>k of n</c> is read as a choice; null when a count is not a reading of this check.</summary>
    public CountAs? Count { get; init; }

    public NumberForm? Number { get; init; }

    public required Likelihood Likelihood { get; init; }

    /// <summary>What looks, colours and generic ranges may weigh at most.</summary>
    public IReadOnlyList<ReadingCap> Caps { get; init => field = value ?? []; } = [];
}

/// <summary>
/// The most that one reading may move any cause. A table is held to it when the knowledge is checked; a number that is judged by a generic range
/// weighs no more where it is read.
/// </summary>
public sealed record ReadingCap
{
    /// <summary>Decibans, above 0.</summary>
    public required double Decibans { get; init; }

    /// <summary>
    /// The choices that it holds for; empty for all, and for a number. With some named, what counts is which of them was read,
    /// given that it was one of them: that a spark was seen may weigh more than what colour it had.
    /// </summary>
    public IReadOnlyList<string> Readings { get; init => field = value ?? []; } = [];

    public required string Source { get; init; }
}

/// <summary>One answer to a check's question.</summary>
public sealed record Option
{
    public required string Id { get; init; }

    public required string Name { get; init; }
}

/// <summary>Which choice a count stands for: none of n, some, all.</summary>
public sealed record CountAs
{
    public required string None { get; init; }

    public required string Some { get; init; }

    public required string All { get; init; }
}

/// <summary>A numeric reading: its unit and the range outside which a typing slip or wrong unit is likely.</summary>
public sealed record NumberForm
{
    public required string Unit { get; init; }

    public required double Low { get; init; }

    public required double High { get; init; }

    public required string Source { get; init; }

    /// <summary>True when a meter can show "over range" here, which is a reading of its own.</summary>
    public bool Open { get; init; }

    /// <summary>What a reading of 0 says, where it is possible and seldom; the technician is asked whether it was seen.</summary>
    public string? Zero { get; init; }
}

/// <summary>A setting of the tool; the first default whose condition holds counts.</summary>
public sealed record Setting
{
    public required string Id { get; init; }

    public required string Name { get; init; }

    public required string Unit { get; init; }

    public required IReadOnlyList<Parameter> Defaults { get; init; }
}
