using System.CommandLine;
using System.Text.Json;
using Undercowl.Cli.Demonstrating;
using Undercowl.Jobs;

namespace Undercowl.Cli.Commands;

internal static class DemoCommand
{
    private const int MostSteps = 30;

    public const string Summary = "Work an invented job from complaint to proven sign-off, as `work` would.";

    public static Verb Build(Shell shell)
    {
        var keep = new Option<string?>("--keep") { HelpName = "FILE", Description = "Keep the job in this file, to look at with the other commands." };
        return new Verb(shell, "demo", Summary, "undercowl demo", "undercowl demo --keep demo.jsonl", "undercowl demo --json").Takes(keep).Does(parsed =>
            Answer.Told(json => parsed.GetValue(keep) is { } path ? Run(shell, path, path, json) : Unkept(shell, json)));
    }

    private static int Unkept(Shell shell, bool json)
    {
        var folder = Directory.CreateTempSubdirectory("undercowl-demo-");
        try
        {
            return Run(shell, Path.Combine(folder.FullName, "demo.jsonl"), null, json);
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    private static int Run(Shell shell, string path, string? kept, bool json)
    {
        var script = Script(shell);
        var telling = new WorkTelling(shell, json, echo: true);
        telling.Say(page => page.Item("", script.About));
        using var job = JobAtHand.Create(shell, path);
        job.Record(shell.Knowledge.Bench.Opening(script.Layout, script.Complaint, script.Words));
        job.Record([.. script.Intake.Select(i => new Intake(i.Question, i.Answer))]);
        var ended = new Work(job, new DemoAnswers(script), telling, MostSteps).Run();
        telling.Ended(ended with { Job = kept });
        return ended.Outcome == "proven" ? ExitCode.Good : ExitCode.Refused;
    }

    private static DemoScript Script(Shell shell)
    {
        var path = Path.Combine(shell.Folder, "demo", "demo.json");
        if (!File.Exists(path))
        {
            throw new Refusal($"The demonstration {path} is not there.", "Build the program again.");
        }

        try
        {
            return JsonSerializer.Deserialize(File.ReadAllBytes(path), DemoJson.Default.DemoScript)!;
        }
        catch (JsonException error)
        {
            throw new Refusal($"{path}, line {(error.LineNumber ?? 0) + 1}: {error.Message}", "Mend the file, or build the program again.");
        }
    }
}
