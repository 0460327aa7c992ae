using System.Text.Json;
using Undercowl.Cli.Demonstrating;
using Undercowl.Cli.Tests.Fixtures;
using Undercowl.Diagnosis.Answers;
using Xunit;

namespace Undercowl.Cli.Tests.Working;

/// <summary>
/// Answers a process of <c>work --json</c> step by step through its pipes, as the invented engine of the demonstration
/// would, and keeps what was typed.
/// </summary>
internal static class WorkedByHand
{
    private const int MostSteps = 40;

    /// <returns>What the process came to, its documents, and the lines that were typed.</returns>
    public static (Ran Ran, JsonElement[] Documents, string[] Typed) To(Terminal terminal, string job)
    {
        var script = JsonSerializer.Deserialize(Repository.Read("demo/demo.json"), DemoJson.Default.DemoScript)!;
        var mends = script.Mends.Select(m => m.Remedy).ToHashSet();
        var engine = new DemoAnswers(script);
        var documents = new List<string>();
        var typed = new List<string>();
        var mended = false;
        using var process = terminal.Start("work", job, "--json");
        while (process.StandardOutput.ReadLine() is { } line)
        {
            documents.Add(line);
            using var document = JsonDocument.Parse(line);
            if (document.RootElement.GetProperty("event").GetString() != "step")
            {
                continue;
            }

            Assert.True(document.RootElement.GetProperty("number").GetInt32() <= MostSteps, "the work goes round in circles");
            var step = document.RootElement.GetProperty("step").Deserialize(AnswerJson.Default.ProposedStep)!;
            if (step.Cautions.Any(c => !c.Acknowledged))
            {
                Type("ok");
            }

            Type(step.Kind switch
            {
                "remedy" or "restore" => "done",
                "make-safe" => "all",
                "sign-off" => "sign technician",
                "refer" => "skip",
                _ => engine.Reading(step, mended) ?? "skip",
            });
            mended |= step.Kind == "remedy" && mends.Contains(step.Id);
        }

        var ran = Terminal.End(process);
        var text = string.Concat(documents.Select(d => d + "\n"));
        return (ran with { Out = text }, new Ran(0, text, "").JsonLines(), [.. typed]);

        void Type(string answer)
        {
            typed.Add(answer);
            process.StandardInput.WriteLine(answer);
            process.StandardInput.Flush();
        }
    }
}
