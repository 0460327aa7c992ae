using System.CommandLine;
using Undercowl.Diagnosis;

namespace Undercowl.Cli.Commands;

internal static class SwapCommand
{
    public const string Summary = "Record that two like parts traded places; a fault that moves with the part is in the part.";

    public static Verb Build(Shell shell)
    {
        var job = CommonArguments.Job();
        var part = new Argument<string>("PART") { Description = "The sort of part." };
        var a = new Argument<string>("A") { Description = "One place, for example cyl:1." };
        var b = new Argument<string>("B") { Description = "The other." };
        var then = new Option<string?>("--then") { HelpName = "WORD", Description = "What the fault did: moved, stayed or cleared. Stands for the last readings taken at both places, traded, kept, or both as the better one." };
        return new Verb(shell, "swap", Summary, "undercowl swap boat7.jsonl PART cyl:2 cyl:3", "undercowl swap boat7.jsonl PART cyl:2 cyl:3 --then moved").Takes(job, part, a, b, then).Does(parsed =>
            Recording.Of(shell, parsed.GetRequiredValue(job), open =>
                Drafting.Swap(open.Diagnosis, parsed.GetRequiredValue(part), parsed.GetRequiredValue(a), parsed.GetRequiredValue(b), parsed.GetValue(then))));
    }
}
