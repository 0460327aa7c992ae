namespace Undercowl.Cli.Documents;

/// <summary>The engine layouts that a job can be started with.</summary>
internal sealed record LayoutsAnswer(int Version, IReadOnlyList<LayoutItem> Layouts);

/// <param name="Id">For <c>--layout</c>.</param>
/// <param name="Name">In words.</param>
/// <param name="Cylinders">Number of cylinders.</param>
/// <param name="Attributes">Strokes, ignition family and the like.</param>
/// <param name="Complaints">For <c>--complaint</c>, with this layout.</param>
internal sealed record LayoutItem(string Id, string Name, int Cylinders, IReadOnlyDictionary<string, string> Attributes, IReadOnlyList<NamedItem> Complaints);

/// <summary>An id and what it means.</summary>
internal sealed record NamedItem(string Id, string Name);

/// <summary>The checks that can be recorded.</summary>
internal sealed record ChecksAnswer(int Version, IReadOnlyList<CheckItem> Checks);

/// <param name="Id">The check.</param>
/// <param name="Name">In words.</param>
/// <param name="Ask">The question to answer.</param>
/// <param name="At"><c>engine</c>, <c>cyl</c> or the part it is done at.</param>
/// <param name="Minutes">Time it takes.</param>
/// <param name="Tools">Tools.</param>
/// <param name="Answers">The answers, or none for a number.</param>
/// <param name="Unit">The unit of a number; null for a choice.</param>
internal sealed record CheckItem(
    string Id, string Name, string Ask, string At, double Minutes, IReadOnlyList<string> Tools, IReadOnlyList<NamedItem> Answers, string? Unit);

/// <summary>The remedies that can be recorded.</summary>
internal sealed record RemediesAnswer(int Version, IReadOnlyList<RemedyItem> Remedies);

/// <param name="Id">The remedy.</param>
/// <param name="Name">In words.</param>
/// <param name="Part">The part acted on.</param>
/// <param name="Minutes">Time it takes.</param>
/// <param name="Parts">Price of what is fitted.</param>
internal sealed record RemedyItem(string Id, string Name, string Part, double Minutes, double Parts);

/// <summary>The questions of the intake interview, with what was answered last.</summary>
internal sealed record QuestionsAnswer(int Version, IReadOnlyList<QuestionItem> Questions);

internal sealed record QuestionItem(string Id, string Ask, IReadOnlyList<NamedItem> Answers, string? Answered);

/// <summary>The tools, and what the job says of each.</summary>
internal sealed record ToolsAnswer(int Version, IReadOnlyList<ToolItem> Tools);

/// <param name="Id">The tool.</param>
/// <param name="Name">In words.</param>
/// <param name="AtHand">True or false as recorded; null when nothing was said.</param>
internal sealed record ToolItem(string Id, string Name, bool? AtHand);
