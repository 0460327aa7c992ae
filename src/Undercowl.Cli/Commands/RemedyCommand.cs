using System.CommandLine;
using Undercowl.Diagnosis;

namespace Undercowl.Cli.Commands;

internal static class RemedyCommand
{
    public const string Summary = "Record that something was put right.";

    public static Verb Build(Shell shell)
    {
        var job = CommonArguments.Job();
        var action = new Argument<string>("ACTION") { Description = "The remedy; see: undercowl remedies JOB." };
        var at = CommonArguments.At("it was done");
        var output = new Option<string?>("--output") { HelpName = "N", Description = "Which output of the part, when not the whole." };
        var result = new Option<string?>("--result") { HelpName = "WORD", Description = $"What came of it, where the engine was tried: {string.Join(", ", Drafting.Results)}. Later: undercowl result." };
        return new Verb(shell, "remedy", Summary, "undercowl remedy boat7.jsonl ACTION", "undercowl remedy boat7.jsonl ACTION --at cyl:2 --result no-change").Takes(job, action, at, output, result).Does(parsed =>
            Recording.Of(shell, parsed.GetRequiredValue(job), open =>
                Drafting.Remedy(open.Diagnosis, parsed.GetRequiredValue(action), parsed.GetValue(at), parsed.GetValue(output), parsed.GetValue(result))));
    }
}
