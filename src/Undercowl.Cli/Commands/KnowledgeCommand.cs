namespace Undercowl.Cli.Commands;

internal static class KnowledgeCommand
{
    public const string Summary = "Check a knowledge folder: every problem with file, line and how to mend it.";

    public static Verb Build(Shell shell) => new Verb(shell, "knowledge", Summary, "undercowl knowledge check knowledge").Takes(KnowledgeCheckCommand.Build(shell));
}
