using System.CommandLine;
using Undercowl.Cli.Documents;

namespace Undercowl.Cli.Commands;

internal static class RemediesCommand
{
    public const string Summary = "List the remedies: all, or those of a layout or a job.";

    public static Verb Build(Shell shell)
    {
        var job = new Argument<string?>("JOB") { Description = "A job's file: list the remedies for its engine.", Arity = ArgumentArity.ZeroOrOne };
        var layout = new Option<string?>("--layout") { HelpName = "LAYOUT", Description = "List the remedies for this layout." };
        return new Verb(shell, "remedies", Summary, "undercowl remedies boat7.jsonl", "undercowl remedies --layout LAYOUT", "undercowl remedies").Takes(job, layout).Does(parsed =>
        {
            var engine = EngineAsked.Of(shell, parsed.GetValue(job), parsed.GetValue(layout));
            RemedyItem[] remedies = [.. shell.Knowledge.Known.Remedies
                .Where(r => engine is null || (r.Only.Holds(engine) && engine.Parts.Any(p => p.Part == r.Part)))
                .Select(r => new RemedyItem(r.Id, r.Name, r.Part, r.Minutes, r.Parts))];
            return Answer.Of(new RemediesAnswer(1, remedies), TerminalJson.Default.RemediesAnswer, (answer, page) =>
                page.Table([.. answer.Remedies.Select(r => new[] { r.Id, $"{r.Minutes:0.#} min", $"parts {r.Parts:0.##}", r.Name })]));
        });
    }
}
