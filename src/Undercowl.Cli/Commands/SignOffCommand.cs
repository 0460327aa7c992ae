using System.CommandLine;
using Undercowl.Cli.Documents;
using Undercowl.Diagnosis.Answers;
using Undercowl.Diagnosis.Working;

namespace Undercowl.Cli.Commands;

internal static class SignOffCommand
{
    public const string Summary = "End the job: as proven, or by another ending that says what stays open.";

    public static Verb Build(Shell shell)
    {
        var job = CommonArguments.Job();
        var ending = new Option<string>("--as")
        {
            HelpName = "ENDING",
            Description = "proven, unproven, referred, declined, get-home, uneconomic or no-fault-found; proven when left out.",
            DefaultValueFactory = _ => "proven",
        };
        var by = new Option<string>("--by") { HelpName = "WHO", Description = "Who signs: a role or a sign of your own.", Required = true };
        return new Verb(shell, "sign-off", Summary, "undercowl sign-off boat7.jsonl --by technician", "undercowl sign-off boat7.jsonl --as referred --by technician")
            .Takes(job, ending, by).Does(parsed =>
            {
                var outcome = Outcomes.Parse(parsed.GetRequiredValue(ending));
                using var open = JobAtHand.Write(shell, parsed.GetRequiredValue(job));
                var answer = Ending.Of(open, outcome, parsed.GetRequiredValue(by));
                if (!answer.Signed)
                {
                    Failure.Say(shell, $"Not signed off as {answer.Outcome}: {answer.Missing.Count} thing{(answer.Missing.Count == 1 ? " is" : "s are")} missing.");
                }

                return Answer.Of(answer, TerminalJson.Default.SignOffAnswer, Write, answer.Signed ? ExitCode.Good : ExitCode.Refused);
            });
    }

    private static void Write(SignOffAnswer answer, Page page)
    {
        page.Line(answer.Signed ? page.Paint.Good($"Signed off as {answer.Outcome}.") : page.Paint.Caution($"Not signed off as {answer.Outcome}. Missing:"));
        page.Items("  - ", answer.Missing);
        if (answer.Open.Count > 0)
        {
            page.Line("Stays open:");
            page.Items("  - ", answer.Open);
        }

        page.Item("", $"The complaint is {BeliefText.GoneForGood(answer.HealthyNow, answer.ErrorBound)}.");
        page.Prevail();
    }
}
