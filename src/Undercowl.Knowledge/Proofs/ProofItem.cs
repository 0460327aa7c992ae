namespace Undercowl.Knowledge;

/// <summary>
/// Something that is to be shown before a repair counts as proven: a reading of one of some checks that is good, taken after the last
/// remedy, swap or state to be undone. Not the complaint's own test, which is wanted always.
/// </summary>
public sealed record ProofItem
{
    public required string Id { get; init; }

    public required string Name { get; init; }

    public Only Only { get; init => field = value ?? []; } = [];

    /// <summary>Checks of which any will do; the first that brings about another heat than the engine has is proposed, else the first.</summary>
    public required IReadOnlyList<string> Checks { get; init; }

    /// <summary>Set-up keys to the values in which it counts; empty: in any.</summary>
    public Dictionary<string, OneOrMore> SetUp { get; init => field = value ?? []; } = [];

    /// <summary>The choices of those checks which are good.</summary>
    public required IReadOnlyList<string> Good { get; init; }

    /// <summary>True: wanted of every job on an engine that has what the checks are made at. Else the complaint names it, or what follows.</summary>
    public bool Always { get; init; }

    /// <summary>Wanted once a remedy that does this, or a check with this danger, was done: fuel work. Null: not for that.</summary>
    public string? After { get; init; }

    /// <summary>True: wanted when it is likelier than not that a fault that comes and goes by itself was there.</summary>
    public bool ComesAndGoes { get; init; }

    /// <summary>Occasions on which it must have been good; null: one.</summary>
    public int? Occasions { get; init; }

    public required string Source { get; init; }
}
