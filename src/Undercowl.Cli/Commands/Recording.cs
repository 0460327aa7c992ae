using Undercowl.Cli.Documents;
using Undercowl.Diagnosis;
using Undercowl.Diagnosis.Working;
using Undercowl.Jobs;

namespace Undercowl.Cli.Commands;

/// <summary>The common way of the commands that write: open, draft, record, say what was recorded.</summary>
internal static class Recording
{
    public static Answer Of(Shell shell, string path, Func<JobAtHand, Draft> draft)
    {
        using var job = JobAtHand.Write(shell, path);
        var drafted = draft(job);
        var ended = Projection.Of(job.Job).Ending;
        var entries = job.Record(drafted.Bodies);
        IReadOnlyList<string> warnings = ended is null || Projection.Of(job.Job).Ending is not null
            ? drafted.Warnings
            : [.. drafted.Warnings, $"This job was signed off as {Outcomes.Text(ended.Body.Outcome)}. It is open again: sign it off anew when done."];
        foreach (var warning in warnings)
        {
            Failure.Say(shell, warning);
        }

        return Recorded(RecordedAnswer.Of(path, entries, warnings, drafted.TakenOver), entries);
    }

    public static Answer Of(Shell shell, string path, Func<JobAtHand, EntryBody> body) => Of(shell, path, job => new Draft([body(job)], []));

    public static Answer Recorded(RecordedAnswer answer, IReadOnlyList<Entry> entries) => Answer.Of(
        answer, TerminalJson.Default.RecordedAnswer, (said, page) =>
        {
            foreach (var entry in entries)
            {
                page.Line($"recorded {EntryWords.Short(entry.Id)}  {EntryWords.Of(entry.Body)}");
            }

            TakenWith.Write(said.TakenWith, "say", page);
        });
}
