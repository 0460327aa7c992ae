namespace Undercowl.Knowledge;

/// <summary>What the owner says is wrong: evidence about a quantity in its own set-up, and the test that proves it gone.</summary>
public sealed record Complaint
{
    public required string Id { get; init; }

    public required string Name { get; init; }

    public Only Only { get; init => field = value ?? []; } = [];

    public Dictionary<string, string> SetUp { get; init => field = value ?? []; } = [];

    public required string Quantity { get; init; }

    /// <summary>Level of the quantity to the chance (0 to 1) that this complaint is made of it.</summary>
    public Dictionary<string, double> Given { get; init => field = value ?? []; } = [];

    /// <summary>What the same words say of other moments: starts again when cool, ran before it died.</summary>
    public IReadOnlyList<SaidBesides> Also { get; init => field = value ?? []; } = [];

    public required string Source { get; init; }

    /// <summary>The levels at which the complaint is gone.</summary>
    public required IReadOnlyList<string> Healthy { get; init; }

    /// <summary>The check, in the complaint's set-up, whose good reading is wanted after the last remedy.</summary>
    public required string SystemTest { get; init; }

    /// <summary>The choices of that check which are good.</summary>
    public required IReadOnlyList<string> Good { get; init; }

    /// <summary>What is to be shown besides before this complaint counts as gone for good.</summary>
    public IReadOnlyList<string> Proofs { get; init => field = value ?? []; } = [];
}

/// <summary>
/// A quantity of the engine that a complaint is evidence of besides, in a set-up of its own and at another moment: what comes and goes may show
/// or not, what passes stands as it does in the complaint.
/// </summary>
public sealed record SaidBesides
{
    public Dictionary<string, string> SetUp { get; init => field = value ?? []; } = [];

    /// <summary>Of the engine; one of each cylinder is read at the first, for what all of them share.</summary>
    public required string Quantity { get; init; }

    /// <summary>Level of the quantity to the chance (0 to 1) that it is said so.</summary>
    public Dictionary<string, double> Given { get; init => field = value ?? []; } = [];
}
