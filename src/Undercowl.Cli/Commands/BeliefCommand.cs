using Undercowl.Diagnosis.Answers;

namespace Undercowl.Cli.Commands;

internal static class BeliefCommand
{
    private const int Shown = 12;

    public const string Summary = "Say what is believed of each part, as found and now, most probable first.";

    public static Verb Build(Shell shell)
    {
        var job = CommonArguments.Job();
        var top = CommonArguments.Top($"How many causes; {Shown} in words and all in JSON when left out.");
        return new Verb(shell, "belief", Summary, "undercowl belief boat7.jsonl", "undercowl belief boat7.jsonl --top 3 --json").Takes(job, top).Does(parsed =>
        {
            using var open = JobAtHand.Read(shell, parsed.GetRequiredValue(job));
            var asked = parsed.GetValue(top);
            var answer = open.Diagnosis.BeliefNow();
            var shown = asked is { } n ? answer with { Causes = [.. answer.Causes.Take(n)] } : answer;
            return Answer.Of(shown, AnswerJson.Default.BeliefAnswer, (_, page) => BeliefText.Write(answer, asked ?? Shown, page));
        });
    }
}
