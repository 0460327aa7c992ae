using System.Text.Json;
using Undercowl.Diagnosis.Answers;

namespace Undercowl.Cli.Commands;

internal static class AnswerCommand
{
    public const string Summary = "The whole answer document of a job as the app has it: step, proposals, belief, engine, log.";

    public static Verb Build(Shell shell)
    {
        var job = CommonArguments.Job();
        return new Verb(shell, "answer", Summary, "undercowl answer boat7.jsonl --json").Takes(job).Does(parsed =>
        {
            using var at = JobAtHand.Read(shell, parsed.GetRequiredValue(job));
            return Answer.Of(at.Diagnosis.Answer(JobAnswer.Proposals, _ => false), AnswerJson.Default.JobAnswer, (answer, page) =>
                page.Line(JsonSerializer.Serialize(answer, AnswerJson.Default.JobAnswer)));
        });
    }
}
