namespace Undercowl.Knowledge;

/// <summary>All the trade's knowledge as checked data: what the files of <c>knowledge/</c> say, in one value.</summary>
public sealed record KnowledgeBase
{
    public IReadOnlyList<Source> Sources { get; init; } = [];

    /// <summary>Renamed ids: old to new. Ids are never reused.</summary>
    public Dictionary<string, string> Aliases { get; init; } = [];

    public IReadOnlyList<PartKind> Parts { get; init; } = [];

    public IReadOnlyList<Quantity> Quantities { get; init; } = [];

    public IReadOnlyList<SetUpKey> SetUps { get; init; } = [];

    public IReadOnlyList<Tool> Tools { get; init; } = [];

    public IReadOnlyList<Hand> Hands { get; init; } = [];

    public IReadOnlyList<Check> Checks { get; init; } = [];

    public IReadOnlyList<Spec> Specs { get; init; } = [];

    public IReadOnlyList<Remedy> Remedies { get; init; } = [];

    public IReadOnlyList<Complaint> Complaints { get; init; } = [];

    public IReadOnlyList<IntakeQuestion> Intake { get; init; } = [];

    public IReadOnlyList<Caution> Cautions { get; init; } = [];

    public IReadOnlyList<Interlock> Interlocks { get; init; } = [];

    public IReadOnlyList<EngineLayout> Layouts { get; init; } = [];

    /// <summary>Costs that belong to no check or remedy, such as the shop's rate until one is entered and the price of referring.</summary>
    public IReadOnlyList<Parameter> Costs { get; init; } = [];
}
