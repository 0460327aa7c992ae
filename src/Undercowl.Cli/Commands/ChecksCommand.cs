using System.CommandLine;
using Undercowl.Cli.Documents;
using Undercowl.Knowledge;

namespace Undercowl.Cli.Commands;

internal static class ChecksCommand
{
    public const string Summary = "List the checks: all, or those of a layout or a job.";

    public static Verb Build(Shell shell)
    {
        var job = new Argument<string?>("JOB") { Description = "A job's file: list the checks of its engine.", Arity = ArgumentArity.ZeroOrOne };
        var layout = new Option<string?>("--layout") { HelpName = "LAYOUT", Description = "List the checks of this layout." };
        return new Verb(shell, "checks", Summary, "undercowl checks boat7.jsonl", "undercowl checks --layout LAYOUT", "undercowl checks").Takes(job, layout).Does(parsed =>
        {
            var engine = EngineAsked.Of(shell, parsed.GetValue(job), parsed.GetValue(layout));
            CheckItem[] checks = [.. shell.Knowledge.Known.Checks.Where(c => engine is null || Fits(c, engine)).Select(Item)];
            return Answer.Of(new ChecksAnswer(1, checks), TerminalJson.Default.ChecksAnswer, Write);
        });
    }

    private static bool Fits(Check check, EngineLayout engine) =>
        check.Only.Holds(engine) && (check.At is "engine" or "cyl" || engine.Parts.Any(p => p.Part == check.At));

    private static CheckItem Item(Check check) => new(
        check.Id, check.Name, check.Ask, check.At, check.Minutes, check.Tools,
        [.. check.Choices.Select(c => new NamedItem(c.Id, c.Name))], check.Number?.Unit);

    private static void Write(ChecksAnswer answer, Page page)
    {
        foreach (var check in answer.Checks)
        {
            page.Line($"{page.Paint.Strong(check.Id)}  {check.Name} ({check.Minutes:0.#} min, at {check.At})");
            page.Item("    ", check.Unit is null ? string.Join(" | ", check.Answers.Select(a => a.Id)) : $"a number in {check.Unit}");
        }
    }
}
