using Undercowl.Cli.Documents;
using Undercowl.Diagnosis;
using Undercowl.Jobs;

namespace Undercowl.Cli.Commands;

/// <summary>The common way of the commands that write: open, draft, record, say what was recorded.</summary>
internal static class Recording
{
    public static Answer Of(Shell shell, string path, Func<JobAtHand, Draft> draft)
    {
        using var job = JobAtHand.Write(shell, path);
        var drafted = draft(job);
        var entries = job.Record(drafted.Bodies);
        foreach (var warning in drafted.Warnings)
        {
            Failure.Say(shell, warning);
        }

        return Recorded(RecordedAnswer.Of(path, entries, drafted.Warnings), entries);
    }

    public static Answer Of(Shell shell, string path, Func<JobAtHand, EntryBody> body) => Of(shell, path, job => new Draft([body(job)], []));

    public static Answer Recorded(RecordedAnswer answer, IReadOnlyList<Entry> entries) => Answer.Of(
        answer, TerminalJson.Default.RecordedAnswer, (_, page) =>
        {
            foreach (var entry in entries)
            {
                page.Line($"recorded {EntryWords.Short(entry.Id)}  {EntryWords.Of(entry.Body)}");
            }
        });
}
