using System.CommandLine;
using Undercowl.Cli.Documents;
using Undercowl.Knowledge;
using Undercowl.KnowledgeCompiler;

namespace Undercowl.Cli.Commands;

internal static class KnowledgeCheckCommand
{
    private const string UsualFolder = "knowledge";

    public const string Summary = "Check a knowledge folder: every problem with file, line and how to mend it.";

    public static Verb Build(Shell shell)
    {
        var folder = new Argument<string?>("DIR") { Description = $"The folder; {UsualFolder} when left out.", Arity = ArgumentArity.ZeroOrOne };
        return new Verb(shell, "check", Summary, "undercowl knowledge check", "undercowl knowledge check knowledge --json").Takes(folder).Does(parsed =>
        {
            var path = parsed.GetValue(folder) ?? UsualFolder;
            var result = KnowledgeFolder.Compile(path);
            foreach (var problem in result.Problems)
            {
                shell.Error.WriteLine(problem);
            }

            var answer = new KnowledgeAnswer(
                1,
                path,
                result.Problems.Count == 0,
                [.. result.Problems.Select(Item)],
                [.. result.Notes.Select(Item)],
                result.Counts,
                result.Knowledge is { } known ? KnowledgeHash.Of(KnowledgeJson.Write(known)) : null);
            return Answer.Of(answer, TerminalJson.Default.KnowledgeAnswer, Write, answer.Good ? ExitCode.Good : ExitCode.Refused);
        });
    }

    private static KnowledgeProblemItem Item(KnowledgeProblem problem) => new(problem.File, problem.Line, problem.Message, problem.Mend);

    private static void Write(KnowledgeAnswer answer, Page page)
    {
        foreach (var note in answer.Notes)
        {
            page.Line($"{note.File}:{note.Line}: {note.Message}; {note.Mend} (note)");
        }

        page.Line(string.Join(", ", answer.Counts.Where(c => c.Value > 0).Select(c => $"{c.Value} {c.Key}")));
        page.Line(answer.Good ? $"In order: {answer.Hash}" : answer.Problems.Count == 1 ? "1 problem." : $"{answer.Problems.Count} problems.");
    }
}
