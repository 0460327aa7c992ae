using System.CommandLine;
using Undercowl.Diagnosis;

namespace Undercowl.Cli.Commands;

internal static class RecordCommand
{
    public const string Summary = "Record what a check read.";

    public static Verb Build(Shell shell)
    {
        var job = CommonArguments.Job();
        var check = new Argument<string>("CHECK") { Description = "The check; see: undercowl checks JOB." };
        var reading = new Argument<string[]>("READING") { Description = "A choice, \"2 of 3\", a number with unit, open, or not-done: why.", Arity = ArgumentArity.OneOrMore };
        var at = CommonArguments.At("it was done");
        var with = new Option<string?>("--with") { HelpName = "PLACE", Description = "For a check that exchanges two parts: where the other one sits." };
        var setUp = new Option<string[]>("--set-up") { HelpName = "KEY=VALUE", Description = "How the engine stood, where it differs from what the check says. May be repeated." };
        var tool = new Option<string?>("--tool") { HelpName = "TOOL", Description = "The tool used, when not the check's own." };
        var by = new Option<string?>("--by") { HelpName = "HAND", Description = "Who looked; the technician when left out." };
        var hearsay = new Option<bool>("--hearsay") { Description = "Told by somebody not trained to tell." };
        var words = new Option<string?>("--words") { HelpName = "TEXT", Description = "Anything to add." };
        return new Verb(
            shell, "record", Summary,
            "undercowl record boat7.jsonl CHECK READING",
            "undercowl record boat7.jsonl CHECK --at cyl:2 2 of 3",
            "undercowl record boat7.jsonl CHECK --at cyl:1 --set-up KEY=VALUE 12.4V",
            "undercowl record boat7.jsonl CHECK not-done: no room for the gauge")
            .Takes(job, check, reading, at, with, setUp, tool, by, hearsay, words).Does(parsed =>
            {
                var said = new SaidFinding(parsed.GetRequiredValue(check), string.Join(' ', parsed.GetRequiredValue(reading)), parsed.GetValue(at))
                {
                    With = parsed.GetValue(with),
                    SetUp = parsed.GetValue(setUp) is { Length: > 0 } changes ? CommonArguments.Map(changes) : null,
                    Tool = parsed.GetValue(tool),
                    Hand = parsed.GetValue(by),
                    Hearsay = parsed.GetValue(hearsay),
                    Words = parsed.GetValue(words),
                };
                return Recording.Of(shell, parsed.GetRequiredValue(job), open => Drafting.Finding(open.Diagnosis, said));
            });
    }
}
