using System.CommandLine;
using Undercowl.Jobs;

namespace Undercowl.Cli.Commands;

internal static class NoteCommand
{
    public const string Summary = "Record free text; it moves no belief.";

    public static Verb Build(Shell shell)
    {
        var job = CommonArguments.Job();
        var text = new Argument<string[]>("TEXT") { Description = "The note.", Arity = ArgumentArity.OneOrMore };
        return new Verb(shell, "note", Summary, "undercowl note boat7.jsonl \"cowl latch is broken\"").Takes(job, text).Does(parsed =>
            Recording.Of(shell, parsed.GetRequiredValue(job), _ => new Note(string.Join(' ', parsed.GetRequiredValue(text)))));
    }
}
