using System.CommandLine;
using Undercowl.Cli.Documents;
using Undercowl.Jobs;

namespace Undercowl.Cli.Commands;

internal static class WithdrawCommand
{
    public const string Summary = "Take an entry back; it stays in the log, and the findings it changes are listed.";

    public static Verb Build(Shell shell)
    {
        var job = CommonArguments.Job();
        var entry = new Argument<string>("ENTRY") { Description = "The entry's id or the end of it, as recorded and reported; or last." };
        var why = new Option<string?>("--why") { HelpName = "TEXT", Description = "The reason." };
        return new Verb(shell, "withdraw", Summary, "undercowl withdraw boat7.jsonl last", "undercowl withdraw boat7.jsonl 5f0c2a91 --why \"read at the wrong cylinder\"")
            .Takes(job, entry, why).Does(parsed =>
            {
                var path = parsed.GetRequiredValue(job);
                using var open = JobAtHand.Write(shell, path);
                var projection = Projection.Of(open.Job);
                var meant = EntryNamed.Of(projection, parsed.GetRequiredValue(entry));
                var changed = projection.Reinterpreted(meant.Id);
                var entries = open.Record(new Withdrawn(meant.Id, parsed.GetValue(why) ?? "no reason given"));
                var answer = new WithdrawnAnswer(
                    1, meant.Id.ToString(), [.. entries.Select(RecordedEntry.Of)],
                    [.. changed.Select(f => new ReinterpretedItem(f.Id.ToString(), f.Body.Check, f.Body.Place.Text))]);
                return Answer.Of(answer, TerminalJson.Default.WithdrawnAnswer, (said, page) =>
                {
                    page.Line($"taken back {EntryWords.Short(meant.Id)}  {EntryWords.Of(meant.Body)}");
                    if (said.Reinterpreted.Count > 0)
                    {
                        page.Line("Read otherwise from now on:");
                        page.Items("  - ", said.Reinterpreted.Select(f => $"{f.Check} at {f.Place} ({f.Entry[^8..]})"));
                    }
                });
            });
    }
}
