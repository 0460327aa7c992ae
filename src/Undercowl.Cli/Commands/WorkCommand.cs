namespace Undercowl.Cli.Commands;

internal static class WorkCommand
{
    public const string Summary = "Work the job step by step: shows the next step, asks, records, until sign-off.";

    public static Verb Build(Shell shell)
    {
        var job = CommonArguments.Job();
        return new Verb(shell, "work", Summary, "undercowl work boat7.jsonl", "undercowl work boat7.jsonl < answers.txt").Takes(job).Does(parsed => Answer.Told(json =>
        {
            using var open = JobAtHand.Write(shell, parsed.GetRequiredValue(job));
            var telling = new WorkTelling(shell, json);
            var ended = new Work(open, new TypedAnswers(shell), telling).Run();
            telling.Ended(ended with { Job = open.Path });
            return telling.Refused && !shell.Prompts ? ExitCode.Refused : ExitCode.Good;
        }));
    }
}
