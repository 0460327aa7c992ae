using System.CommandLine;
using Undercowl.Diagnosis;
using Undercowl.Jobs;

namespace Undercowl.Cli.Commands;

internal static class ResultCommand
{
    public const string Summary = "Record what came of an earlier remedy, once the engine has been tried.";

    public static Verb Build(Shell shell)
    {
        var job = CommonArguments.Job();
        var came = new Argument<string>("RESULT") { Description = $"One of {string.Join(", ", Drafting.Results)}." };
        var entry = new Argument<string?>("ENTRY") { Description = "The remedy's entry or the end of its id; the last remedy when left out.", Arity = ArgumentArity.ZeroOrOne };
        return new Verb(shell, "result", Summary, "undercowl result boat7.jsonl no-change", "undercowl result boat7.jsonl in-part 5f0c2a91").Takes(job, came, entry).Does(parsed =>
            Recording.Of(shell, parsed.GetRequiredValue(job), open => Drafting.Result(
                open.Diagnosis, parsed.GetRequiredValue(came), parsed.GetValue(entry) is { } text ? EntryNamed.Of(Projection.Of(open.Job), text).Id : null)));
    }
}
