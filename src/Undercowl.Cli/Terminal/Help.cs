using System.CommandLine;
using Undercowl.Cli.Commands;

namespace Undercowl.Cli;

/// <summary>Writes help, examples first: most people want a line to copy.</summary>
internal static class Help
{
    public static int Overview(Shell shell)
    {
        var page = new Page(shell);
        page.Line(page.Paint.Strong("Examples"));
        page.Items("  ",
        [
            "undercowl demo",
            "undercowl start boat7.jsonl --layout LAYOUT --complaint COMPLAINT",
            "undercowl work boat7.jsonl",
            "undercowl next boat7.jsonl",
        ]);
        page.Heading("Commands");
        page.Table([.. AllCommands.All.Select(c => new[] { "  " + c.Name, c.Summary })]);
        page.Line();
        page.Item("", "Every command takes --json (one line of JSON on standard output) and --help.");
        page.Item("", "Exit codes: 0 done, 1 refused or a problem, 2 the command line is wrong.");
        page.Prevail();
        return ExitCode.Good;
    }

    public static int Of(Verb verb, Shell shell)
    {
        var page = new Page(shell);
        page.Line(page.Paint.Strong("Examples"));
        // Not broken at the page's width: an example is there to be copied.
        foreach (var example in verb.Examples)
        {
            page.Line("  " + example);
        }

        page.Heading("What it does");
        page.Item("  ", verb.Description ?? "");
        page.Heading("Usage");
        page.Item("  ", $"undercowl {verb.FullName} {string.Join(' ', verb.Arguments.Select(Named).Append("[options]"))}");
        if (verb.Subcommands.Count > 0)
        {
            page.Table([.. verb.Subcommands.Select(c => new[] { "  " + c.Name, c.Description ?? "" })]);
        }

        if (verb.Arguments.Count > 0)
        {
            page.Heading("Arguments");
            page.Table([.. verb.Arguments.Select(a => new[] { "  " + a.Name, a.Description ?? "" })]);
        }

        page.Heading("Options");
        page.Table([.. verb.Options.Select(o => new[] { "  " + o.Name + (o.HelpName is null ? "" : " " + o.HelpName), (o.Required ? "(wanted) " : "") + o.Description })]);
        return ExitCode.Good;
    }

    private static string Named(Argument argument) => argument.Arity switch
    {
        { MinimumNumberOfValues: 0, MaximumNumberOfValues: > 1 } => $"[{argument.Name}…]",
        { MinimumNumberOfValues: 0 } => $"[{argument.Name}]",
        { MaximumNumberOfValues: > 1 } => $"{argument.Name}…",
        _ => argument.Name,
    };
}
