using System.CommandLine;
using Undercowl.Diagnosis.Working;

namespace Undercowl.Cli.Commands;

internal static class RestoreCommand
{
    public const string Summary = "Record that what was disturbed is put back: one item of the restore list, or all.";

    public static Verb Build(Shell shell)
    {
        var job = CommonArguments.Job();
        var key = new Argument<string?>("KEY") { Description = "One item of the list, as `undercowl next JOB` shows it, or all; left out, the list is told and nothing recorded.", Arity = ArgumentArity.ZeroOrOne };
        return new Verb(shell, "restore", Summary, "undercowl restore boat7.jsonl all", "undercowl restore boat7.jsonl KEY").Takes(job, key).Does(parsed =>
            Recording.Of(shell, parsed.GetRequiredValue(job), open => Restoring.Draft(open.Diagnosis, parsed.GetValue(key))));
    }
}
