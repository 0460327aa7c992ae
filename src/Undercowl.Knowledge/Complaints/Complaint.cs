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

    public required string Source { get; init; }

    /// <summary>The levels at which the complaint is gone.</summary>
    public required IReadOnlyList<string> Healthy { get; init; }

    /// <summary>The check, in the complaint's set-up, whose good reading is wanted after the last remedy.</summary>
    public required string SystemTest { get; init; }

    /// <summary>The choices of that check which are good.</summary>
    public required IReadOnlyList<string> Good { get; init; }
}
