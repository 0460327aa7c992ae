namespace Undercowl.Cli.Documents;

/// <summary>An entry taken back, and the findings that are read otherwise from now on.</summary>
internal sealed record WithdrawnAnswer(int Version, string Withdrawn, IReadOnlyList<RecordedEntry> Entries, IReadOnlyList<ReinterpretedItem> Reinterpreted);

internal sealed record ReinterpretedItem(string Entry, string Check, string Place);

/// <summary>How the interlocks stand; with what was recorded just now.</summary>
internal sealed record SafetyAnswer(int Version, IReadOnlyList<InterlockItem> Interlocks, IReadOnlyList<RecordedEntry> Entries);

/// <param name="Id">The interlock.</param>
/// <param name="Name">In words.</param>
/// <param name="Clear">False: steps with its hazards are withheld.</param>
/// <param name="Known">False: nothing was recorded about it.</param>
/// <param name="Reason">Why, and what would lift it.</param>
/// <param name="Missing">The conditions still wanted.</param>
/// <param name="ToSmell">Places still to be smelt clear, where that states one of the conditions.</param>
/// <param name="Enough">Readings of which one alone is enough, each as check and choice.</param>
internal sealed record InterlockItem(
    string Id, string Name, bool Clear, bool Known, string Reason, IReadOnlyList<NamedItem> Missing, IReadOnlyList<string> ToSmell, IReadOnlyList<string> Enough);

/// <summary>What a merge came to.</summary>
internal sealed record MergedAnswer(int Version, string Into, int Added, int Entries);

/// <summary>The network of a job as text for general tools.</summary>
internal sealed record NetworkAnswer(int Version, string Format, string? Text, string? Evidence, IReadOnlyList<string> Files);

/// <summary>What the check of a knowledge folder came to.</summary>
internal sealed record KnowledgeAnswer(
    int Version, string Folder, bool Good, IReadOnlyList<KnowledgeProblemItem> Problems, IReadOnlyList<KnowledgeProblemItem> Notes,
    IReadOnlyDictionary<string, int> Counts, string? Hash);

internal sealed record KnowledgeProblemItem(string File, int Line, string Message, string Mend);
