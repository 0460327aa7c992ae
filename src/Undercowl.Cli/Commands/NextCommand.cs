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
        return new Verb(shell, "next", Summary, "undercowl next boat7.jsonl", "undercowl next boat7.jsonl --top 1 --json").Takes(job, top).Does(parsed =>
        {
            var path = parsed.GetRequiredValue(job);
            using var open = JobAtHand.Read(shell, path);
            return Answer.Of(open.Diagnosis.Next(parsed.GetValue(top) ?? Shown), AnswerJson.Default.NextAnswer, (answer, page) => Write(path, answer, page));
        });
    }

    private static void Write(string path, NextAnswer answer, Page page)
    {
        foreach (var (i, step) in answer.Proposals.Index())
        {
            if (i == 0)
            {
                StepText.Write(step, answer.Currency, page);
                page.Line();
                page.Item("Record it: ", StepText.Recording(path, step));
                continue;
            }

            if (i == 1)
            {
                page.Heading("Or");
            }

            page.Item($"  {i + 1}. ", $"{step.Name} ({StepText.Cost(step, answer.Currency)}): {step.Why}");
        }

        if (answer.Proposals.Count == 0)
        {
            page.Line("Nothing is left to propose. See: undercowl report, undercowl sign-off.");
        }

        foreach (var withheld in answer.Withheld.GroupBy(w => w.Reason))
        {
            page.Heading("Withheld");
            page.Item("  ", withheld.Key);
            page.Item("  - ", string.Join(", ", withheld.Select(w => $"{w.Id}{(w.Place == "engine" ? "" : $" at {w.Place}")}")));
        }

        if (answer.Unavailable.Count > 0)
        {
            page.Heading("Cannot be done now");
            page.Items("  - ", answer.Unavailable.GroupBy(u => u.Reason).Select(g => $"{string.Join(", ", g.Select(u => u.Id).Distinct())}: {g.Key}"));
        }

        if (answer.Restore.Count > 0)
        {
            page.Heading("To put back before sign-off");
            page.Items("  - ", answer.Restore.Select(r => $"{r.Key}: {r.What}. {r.How}"));
        }
    }
}
