using System.Globalization;
using Undercowl.Diagnosis.Answers;

namespace Undercowl.Cli.Commands;

internal static class SensitivityCommand
{
    public const string Summary = "Say which numbers of the knowledge, if off as far as they may be, would change the next step; may take up to a minute.";

    public static Verb Build(Shell shell)
    {
        var job = CommonArguments.Job();
        return new Verb(shell, "sensitivity", Summary, "undercowl sensitivity boat7.jsonl").Takes(job).Does(parsed =>
        {
            using var open = JobAtHand.Read(shell, parsed.GetRequiredValue(job));
            shell.Error.WriteLine("Each number is tried by itself: this may take up to a minute, on a large job longer.");
            var answer = shell.Knowledge.Bench.Sensitivity(open.Job);
            answer = answer with { Turning = [.. answer.Turning.Select(t => t with { Factor = AuditText.Placed(shell, t.Factor) })] };
            return Answer.Of(answer, AnswerJson.Default.SensitivityAnswer, Write);
        });
    }

    private static void Write(SensitivityAnswer answer, Page page)
    {
        page.Line($"Next: {Said(answer.Next)}.");
        page.Line(answer.Turning.Count == 0
            ? $"None of {answer.Tried} numbers, moved by itself as far as its source says that it may be off, would change that."
            : $"Of {answer.Tried} numbers, each moved by itself as far as its source says that it may be off, {answer.Turning.Count} would change that:");
        page.Line();
        if (answer.Turning.Count > 0)
        {
            page.Table(
            [
                ["value", "if it were", "source", "stands on", "then next"],
                .. answer.Turning.Select(t => new[] { Number(t.Factor.Value), Number(t.To), t.Factor.Source ?? "", t.Factor.Stands ?? t.Factor.Address, Said(t.Instead) }),
            ]);
            page.Line();
        }

        page.Item("", $"{answer.NotTried} numbers were not moved: nothing is said of how far they may be off, or they are of unlikely conditions.");
    }

    private static string Said(StepName step) => step.Name + (step.Place is "engine" or "" ? "" : $" ({step.Place})");

    private static string Number(double value) => value.ToString("0.####", CultureInfo.InvariantCulture);
}
