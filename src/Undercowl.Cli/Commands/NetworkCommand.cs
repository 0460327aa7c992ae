using System.CommandLine;
using Undercowl.Cli.Documents;
using Undercowl.Diagnosis;

namespace Undercowl.Cli.Commands;

internal static class NetworkCommand
{
    private static readonly string[] Formats = ["xmlbif", "uai"];

    public const string Summary = "Write the job's network with its evidence, for any general tool.";

    public static Verb Build(Shell shell)
    {
        var job = CommonArguments.Job();
        var format = new Option<string>("--format") { HelpName = "FORMAT", Description = "xmlbif (evidence in it) or uai (evidence in a file of its own).", Required = true };
        var file = new Option<string?>("--out") { HelpName = "FILE", Description = "Write to this file, and evidence to FILE.evid; left out, the network goes to standard output." };
        return new Verb(shell, "network", Summary, "undercowl network boat7.jsonl --format xmlbif --out boat7.xml", "undercowl network boat7.jsonl --format uai --out boat7.uai")
            .Takes(job, format, file).Does(parsed =>
            {
                var asked = parsed.GetRequiredValue(format);
                if (!Formats.Contains(asked))
                {
                    throw new DiagnosisException($"There is no format \"{asked}\".", Near.Mend(asked, Formats));
                }

                using var open = JobAtHand.Read(shell, parsed.GetRequiredValue(job));
                var network = open.Diagnosis.Export(asked);
                if (parsed.GetValue(file) is not { } path)
                {
                    if (network.Evidence is not null)
                    {
                        Failure.Say(shell, "The evidence is a file of its own: name one with --out to get it, or use --json.");
                    }

                    return Answer.Of(
                        new NetworkAnswer(1, asked, network.Text, network.Evidence, []), TerminalJson.Default.NetworkAnswer, (answer, page) => page.Line(answer.Text!.TrimEnd()));
                }

                List<(string Path, string Text)> files = [(path, network.Text)];
                if (network.Evidence is { } evidence)
                {
                    files.Add((path + ".evid", evidence));
                }

                if (files.Exists(f => Path.GetFullPath(f.Path) == Path.GetFullPath(open.Path)))
                {
                    throw new Refusal($"{path} would be written over the job.", "Name another file with --out.");
                }

                files.ForEach(f => Written.Whole(f.Path, f.Text));

                return Answer.Of(new NetworkAnswer(1, asked, null, null, [.. files.Select(f => f.Path)]), TerminalJson.Default.NetworkAnswer, (answer, page) => page.Items("wrote ", answer.Files));
            });
    }
}
