using System.CommandLine;
using Undercowl.Diagnosis.Answers;

namespace Undercowl.Cli.Commands;

internal static class NextCommand
{
    private const int Shown = 5;

    public const string Summary = "Say what to do next, best first, and what is withheld and why.";

    public static Verb Build(Shell shell)
    {
        var job = CommonArguments.Job();
        var top = CommonArguments.Top($"How many proposals; {Shown} when left out.");
        var all = new Option<bool>("--all") { Description = "Name every step that is withheld or cannot be done; JSON always does." };
        return new Verb(shell, "next", Summary, "undercowl next boat7.jsonl", "undercowl next boat7.jsonl --top 1 --json").Takes(job, top, all).Does(parsed =>
        {
            var path = parsed.GetRequiredValue(job);
            using var open = JobAtHand.Read(shell, path);
            return Answer.Of(open.Diagnosis.Next(parsed.GetValue(top) ?? Shown), AnswerJson.Default.NextAnswer, (answer, page) => NextText.Write(path, answer, parsed.GetValue(all), page));
        });
    }
}
