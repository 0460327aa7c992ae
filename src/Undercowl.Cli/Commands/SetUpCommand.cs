using System.CommandLine;
using Undercowl.Diagnosis;

namespace Undercowl.Cli.Commands;

internal static class SetUpCommand
{
    public const string Summary = "Record how the engine stands now: what is off, out, warm or put back.";

    public static Verb Build(Shell shell)
    {
        var job = CommonArguments.Job();
        var changes = new Argument<string[]>("KEY=VALUE") { Description = "What changed, and to what; KEY@cyl:2=VALUE for one cylinder.", Arity = ArgumentArity.OneOrMore };
        return new Verb(shell, "set-up", Summary, "undercowl set-up boat7.jsonl KEY=VALUE", "undercowl set-up boat7.jsonl KEY@cyl:1=VALUE KEY=VALUE").Takes(job, changes).Does(parsed =>
            Recording.Of(shell, parsed.GetRequiredValue(job), open => Drafting.SetUp(open.Diagnosis, CommonArguments.Map(parsed.GetRequiredValue(changes)))));
    }
}
