namespace Undercowl.Knowledge;

/// <summary>All the trade's knowledge as checked data: what the files of <c>knowledge/</c> say, in one value.</summary>
public sealed record KnowledgeBase
{
    public IReadOnlyList<Source> Sources { get; init => field = value ?? []; } = [];

    /// <summary>Renamed ids: old to new. Ids are never reused.</summary>
    public Dictionary<string, string> Aliases { get; init => field = value ?? []; } = [];

    /// <summary>The id under which a record stands today: of one that was renamed the new one, of any other itself. Jobs keep the ids of their day.</summary>
    public string Today(string id) => Aliases.GetValueOrDefault(id, id);

    /// <summary>The check that a job's entry means; null when it is not known today.</summary>
    public Check? CheckOf(string id) => Checks.FirstOrDefault(c => c.Id == Today(id));

    /// <summary>The remedy that a job's entry means; null when it is not known today.</summary>
    public Remedy? RemedyOf(string id) => Remedies.FirstOrDefault(r => r.Id == Today(id));

    /// <summary>The complaint that a job's entry means; null when it is not known today.</summary>
    public Complaint? ComplaintOf(string id) => Complaints.FirstOrDefault(c => c.Id == Today(id));

    /// <summary>The question that a job's entry answers; null when it is not known today.</summary>
    public IntakeQuestion? QuestionOf(string id) => Intake.FirstOrDefault(q => q.Id == Today(id));

    /// <summary>The kind of part that a job's entry means; null when it is not known today.</summary>
    public PartKind? PartOf(string id) => Parts.FirstOrDefault(p => p.Id == Today(id));

    public IReadOnlyList<PartKind> Parts { get; init => field = value ?? []; } = [];

    public IReadOnlyList<Quantity> Quantities { get; init => field = value ?? []; } = [];

    public IReadOnlyList<SetUpKey> SetUps { get; init => field = value ?? []; } = [];

    public IReadOnlyList<Tool> Tools { get; init => field = value ?? []; } = [];

    public IReadOnlyList<Hand> Hands { get; init => field = value ?? []; } = [];

    public IReadOnlyList<Check> Checks { get; init => field = value ?? []; } = [];

    public IReadOnlyList<Spec> Specs { get; init => field = value ?? []; } = [];

    public IReadOnlyList<Remedy> Remedies { get; init => field = value ?? []; } = [];

    public IReadOnlyList<Complaint> Complaints { get; init => field = value ?? []; } = [];

    public IReadOnlyList<CommonCause> CommonCauses { get; init => field = value ?? []; } = [];

    /// <summary>What is to be shown before a repair counts as proven, besides the complaint's own test.</summary>
    public IReadOnlyList<ProofItem> Proofs { get; init => field = value ?? []; } = [];

    public IReadOnlyList<IntakeQuestion> Intake { get; init => field = value ?? []; } = [];

    public IReadOnlyList<Caution> Cautions { get; init => field = value ?? []; } = [];

    public IReadOnlyList<Interlock> Interlocks { get; init => field = value ?? []; } = [];

    public IReadOnlyList<EngineLayout> Layouts { get; init => field = value ?? []; } = [];

    /// <summary>Costs that belong to no check or remedy, such as the shop's rate until one is entered and the price of referring.</summary>
    public IReadOnlyList<Parameter> Costs { get; init => field = value ?? []; } = [];

    /// <summary>
    /// How often an engine that is still wrong is called better after a remedy: <c>noticed</c> where something was mended since it was last tried,
    /// <c>hoped</c> where nothing was. Chances, 0 to 1.
    /// </summary>
    public IReadOnlyList<Parameter> Results { get; init => field = value ?? []; } = [];
}
