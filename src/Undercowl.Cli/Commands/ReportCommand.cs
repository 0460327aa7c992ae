using Undercowl.Diagnosis.Answers;

namespace Undercowl.Cli.Commands;

internal static class ReportCommand
{
    public const string Summary = "Print the record of the job, for the customer and the next technician.";

    public static Verb Build(Shell shell)
    {
        var job = CommonArguments.Job();
        return new Verb(shell, "report", Summary, "undercowl report boat7.jsonl", "undercowl report boat7.jsonl > boat7.txt").Takes(job).Does(parsed =>
        {
            using var open = JobAtHand.Read(shell, parsed.GetRequiredValue(job));
            return Answer.Of(open.Diagnosis.Report(), AnswerJson.Default.ReportAnswer, ReportText.Write);
        });
    }
}
