using System.CommandLine;
using Undercowl.Cli.Documents;
using Undercowl.Jobs;

namespace Undercowl.Cli.Commands;

internal static class StartCommand
{
    public const string Summary = "Start a job: make its file, with the engine's layout and the complaint.";

    public static Verb Build(Shell shell)
    {
        var job = new Argument<string>("JOB") { Description = "The file to make." };
        var layout = new Option<string>("--layout") { HelpName = "LAYOUT", Description = "The engine layout; see: undercowl layouts.", Required = true };
        var complaint = new Option<string>("--complaint") { HelpName = "COMPLAINT", Description = "What is complained of; see: undercowl layouts.", Required = true };
        var words = new Option<string?>("--words") { HelpName = "TEXT", Description = "The customer's own words." };
        var previous = new Option<string?>("--previous") { HelpName = "JOB", Description = "The file of this engine's visit before." };
        return new Verb(
            shell, "start", Summary,
            "undercowl start boat7.jsonl --layout LAYOUT --complaint COMPLAINT",
            "undercowl start boat7b.jsonl --layout LAYOUT --complaint COMPLAINT --words \"died off the point\" --previous boat7.jsonl")
            .Takes(job, layout, complaint, words, previous).Does(parsed =>
            {
                var path = parsed.GetRequiredValue(job);
                var opening = shell.Knowledge.Bench.Opening(parsed.GetRequiredValue(layout), parsed.GetRequiredValue(complaint), parsed.GetValue(words)) with
                {
                    Previous = Before(shell, parsed.GetValue(previous)),
                };
                using var at = JobAtHand.Create(shell, path);
                var entries = at.Record(opening);
                return Answer.Of(RecordedAnswer.Of(path, entries), TerminalJson.Default.RecordedAnswer, (_, page) =>
                {
                    page.Line($"Started {path}.");
                    page.Line($"Next: undercowl work {path}   or   undercowl next {path}");
                });
            });
    }

    private static EntryId? Before(Shell shell, string? path)
    {
        if (path is null)
        {
            return null;
        }

        using var before = JobAtHand.Read(shell, path);
        return Projection.Of(before.Job).Opening?.Id ?? throw new Refusal($"{path} has no opening entry.", "Name the job of the visit before.");
    }
}
