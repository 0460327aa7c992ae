namespace Undercowl.Diagnosis.Answers;

/// <summary>What to do next: proposals, best first, and what is withheld or cannot be done, with the reason.</summary>
/// <param name="Version">Version of this document's form.</param>
/// <param name="Proposals">Best first.</param>
/// <param name="Questions">Questions of the interview worth putting besides, the most telling first; they cost nothing.</param>
/// <param name="Withheld">Steps that an interlock withholds.</param>
/// <param name="Unavailable">Steps that cannot be done now: no tool, declined, the engine will not crank.</param>
/// <param name="Restore">What must be undone before sign-off.</param>
/// <param name="Currency">The currency of all costs.</param>
public sealed record NextAnswer(
    int Version,
    IReadOnlyList<ProposedStep> Proposals,
    IReadOnlyList<QuestionAnswer> Questions,
    IReadOnlyList<NotProposed> Withheld,
    IReadOnlyList<NotProposed> Unavailable,
    IReadOnlyList<RestoreAnswer> Restore,
    string Currency);

/// <summary>A step, all that is needed to do it, and what it is for.</summary>
/// <param name="Kind">check, remedy, system-test, proof (a check that is to be shown before the repair counts as proven), refer, make-safe, set-up (a state to be brought about before the work that it helps), or swap (a check that first exchanges two parts).</param>
/// <param name="Id">The check, remedy, interlock or set-up key; empty for refer.</param>
/// <param name="Place">Where.</param>
/// <param name="With">For a swap: the other place.</param>
/// <param name="Name">The step in words.</param>
/// <param name="Ask">The question to answer, for a check.</param>
/// <param name="Why">Why this step, in words.</param>
/// <param name="Minutes">Time it takes; null where it is not reckoned (making safe, putting back, handing on, signing off).</param>
/// <param name="Cost">Time at the shop's rate and parts; null where it is not reckoned.</param>
/// <param name="ExpectedCostToFinish">Expected cost from here to a running engine if this is next; null where it is not reckoned.</param>
/// <param name="SetUp">The whole set-up in which it is done.</param>
/// <param name="Changes">What of the engine as it stands must be changed first.</param>
/// <param name="Tools">Tools.</param>
/// <param name="Cautions">Cautions, to be read first.</param>
/// <param name="Steps">What to do.</param>
/// <param name="Answers">The answers that may be recorded; for a number the unit.</param>
/// <param name="WouldMean">For each outcome the cause that would then lead.</param>
public sealed record ProposedStep(
    string Kind,
    string Id,
    string Place,
    string? With,
    string Name,
    string Ask,
    string Why,
    double? Minutes,
    double? Cost,
    double? ExpectedCostToFinish,
    IReadOnlyDictionary<string, string> SetUp,
    IReadOnlyList<string> Changes,
    IReadOnlyList<string> Tools,
    IReadOnlyList<CautionAnswer> Cautions,
    IReadOnlyList<string> Steps,
    IReadOnlyList<string> Answers,
    IReadOnlyList<OutcomeAnswer> WouldMean)
{
    /// <summary>States of heat to be said with the reading: the step is meant in another than the engine has now.</summary>
    public IReadOnlyDictionary<string, string> Said { get; init; } = new Dictionary<string, string>();

    /// <summary>The answers in words, where they are choices.</summary>
    public IReadOnlyList<NamedAnswer> Choices { get; init; } = [];

    /// <summary>The number that is asked for; null where none is.</summary>
    public NumberAsked? Number { get; init; }

    /// <summary>True when <c>k of n</c> is an answer.</summary>
    public bool Counted { get; init; }

    /// <summary>The tools in words, in the order of <see cref="Tools"/>.</summary>
    public IReadOnlyList<NamedAnswer> Needs { get; init; } = [];
}

/// <summary>Something by id and in words.</summary>
public sealed record NamedAnswer(string Id, string Name);

/// <summary>A number that is asked for.</summary>
/// <param name="Unit">Its unit when none is said.</param>
/// <param name="Units">The units that it may be given in, the usual one among them.</param>
/// <param name="Low">Below this a slip is likely, in <paramref name="Unit"/>.</param>
/// <param name="High">Above this a slip is likely.</param>
/// <param name="Open">True when a meter can show "over range", which is an answer of its own.</param>
public sealed record NumberAsked(string Unit, IReadOnlyList<string> Units, double Low, double High, bool Open);

/// <summary>A question to the customer that nobody has answered yet.</summary>
/// <param name="Id">The question.</param>
/// <param name="Ask">As it is put.</param>
/// <param name="Answers">The answers that may be recorded.</param>
/// <param name="Bits">How much its answer would tell of what must be mended.</param>
/// <param name="Choices">The answers in words.</param>
public sealed record QuestionAnswer(string Id, string Ask, IReadOnlyList<string> Answers, double Bits, IReadOnlyList<NamedAnswer> Choices);

/// <summary>A caution by id and text; <paramref name="Acknowledged"/> when it was, in this job and set-up.</summary>
public sealed record CautionAnswer(string Id, string Text, bool Acknowledged);

/// <summary>An outcome of a check and the cause that would lead after it, in words; null when nothing stands out.</summary>
public sealed record OutcomeAnswer(string Outcome, string? Leading);

/// <summary>A step that is not proposed, and why.</summary>
public sealed record NotProposed(string Kind, string Id, string Place, string Name, string Reason);

/// <summary>One item of the restore list.</summary>
public sealed record RestoreAnswer(string Key, string What, string How);
