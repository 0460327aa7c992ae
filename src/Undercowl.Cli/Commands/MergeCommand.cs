using System.CommandLine;
using Undercowl.Cli.Documents;
using Undercowl.Jobs;

namespace Undercowl.Cli.Commands;

internal static class MergeCommand
{
    public const string Summary = "Take the entries of other copies of a job in; any order gives the same file.";

    public static Verb Build(Shell shell)
    {
        var into = new Argument<string>("INTO") { Description = "The job's file that takes the entries in." };
        var from = new Argument<string[]>("FROM") { Description = "The other copies; they are only read.", Arity = ArgumentArity.OneOrMore };
        return new Verb(shell, "merge", Summary, "undercowl merge boat7.jsonl tablet/boat7.jsonl", "undercowl merge boat7.jsonl a.jsonl b.jsonl").Takes(into, from).Does(parsed =>
        {
            var path = parsed.GetRequiredValue(into);
            using var open = JobAtHand.Write(shell, path);
            var before = open.Job.Count;
            var all = open.Job;
            foreach (var other in parsed.GetRequiredValue(from))
            {
                using var copy = JobAtHand.Read(shell, other);
                if (Opening(copy.Job) is { } theirs && Opening(all) is { } ours && theirs != ours)
                {
                    throw new Refusal($"{other} is another job, not a copy of {path}.", "Merge copies of one job only; nothing was taken in.");
                }

                all = all.Merge(copy.Job);
            }

            // One replacement for all copies: either every one of them is in, or none.
            open.MergeIn(all);
            return Answer.Of(new MergedAnswer(1, path, all.Count - before, all.Count), TerminalJson.Default.MergedAnswer, (merged, page) =>
                page.Line($"{merged.Into}: {merged.Added} entries added, {merged.Entries} in all."));
        });
    }

    private static EntryId? Opening(Job job) => Projection.Of(job).Opening?.Id;
}
