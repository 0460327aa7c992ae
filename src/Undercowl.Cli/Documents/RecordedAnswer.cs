using System.Text.Json;
using Undercowl.Diagnosis;
using Undercowl.Jobs;

namespace Undercowl.Cli.Documents;

/// <summary>What was written to a job.</summary>
/// <param name="Version">Version of this document's form.</param>
/// <param name="Job">The job's file as named.</param>
/// <param name="Entries">The entries recorded, in order.</param>
/// <param name="Warnings">What the technician must know about it; also on the error stream.</param>
/// <param name="TakenWith">Unusual states that a reading took over from how the engine stands.</param>
internal sealed record RecordedAnswer(int Version, string Job, IReadOnlyList<RecordedEntry> Entries, IReadOnlyList<string> Warnings, IReadOnlyList<TakenState> TakenWith)
{
    public static RecordedAnswer Of(string job, IEnumerable<Entry> entries, IReadOnlyList<string>? warnings = null, IReadOnlyList<TakenState>? takenWith = null) =>
        new(1, job, [.. entries.Select(RecordedEntry.Of)], warnings ?? [], takenWith ?? []);
}

/// <summary>One entry as recorded: its id, its kind, and its body as docs/job-format.md has it.</summary>
internal sealed record RecordedEntry(string Entry, string Kind, JsonElement Body)
{
    public static RecordedEntry Of(Entry entry)
    {
        using var line = JsonDocument.Parse(entry.Line);
        return new RecordedEntry(entry.Id.ToString(), entry.Body.Kind, line.RootElement.GetProperty("body").Clone());
    }
}
