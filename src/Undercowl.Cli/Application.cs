using System.CommandLine;
using System.CommandLine.Parsing;
using Undercowl.Cli.Commands;
using Undercowl.Diagnosis;

namespace Undercowl.Cli;

/// <summary>The command line as a whole: picks the command, parses, runs it, and turns refusals into messages and exit codes.</summary>
internal static class Application
{
    public static int Run(IReadOnlyList<string> args, Shell shell)
    {
        if (args.Count == 0 || args[0] is "--help" or "-h" or "-?" or "/?" or "help")
        {
            return args.Count > 1 && args[0] == "help" ? Run([args[1], "--help"], shell) : Help.Overview(shell);
        }

        var json = args.TakeWhile(a => a != "--").Contains("--json");
        // Only the command asked for is built: building all of them would cost a quarter of the time that `next` may take.
        if (AllCommands.Find(args[0]) is not { } entry)
        {
            return Failure.Usage(shell, json, $"There is no command \"{args[0]}\". {Near.Mend(args[0], AllCommands.Names)}", "undercowl --help");
        }

        var verb = entry.Build(shell);
        string[] rest = [.. args.Skip(1)];
        var at = verb;
        while (rest.Length > 0 && at.Subcommands.OfType<Verb>().FirstOrDefault(c => c.Name == rest[0]) is { } inner)
        {
            (at, rest) = (inner, rest[1..]);
        }

        if (rest.TakeWhile(a => a != "--").Any(a => a is "--help" or "-h" or "-?"))
        {
            return Help.Of(at, shell);
        }

        var parsed = CommandLineParser.Parse(at, rest, new ParserConfiguration { ResponseFileTokenReplacer = null });
        return at.Mistake(parsed) is { } mistake
            ? Failure.Usage(shell, json, mistake, $"undercowl {at.FullName} --help")
            : Failure.Guard(shell, json, () => at.Run(parsed));
    }
}
