using System.CommandLine;
using System.Globalization;
using Undercowl.Diagnosis.Answers;

namespace Undercowl.Cli.Commands;

internal static class WhyCommand
{
    public const string Summary = "Say why a cause is believed as it is: what each finding weighed, in decibans.";

    public static Verb Build(Shell shell)
    {
        var job = CommonArguments.Job();
        var cause = new Argument<string>("CAUSE") { Description = "The cause's id, as `undercowl belief JOB` shows it." };
        return new Verb(shell, "why", Summary, "undercowl why boat7.jsonl PART@cyl:2.ASPECT=CONDITION").Takes(job, cause).Does(parsed =>
        {
            using var open = JobAtHand.Read(shell, parsed.GetRequiredValue(job));
            return Answer.Of(open.Diagnosis.Why(parsed.GetRequiredValue(cause)), AnswerJson.Default.WhyAnswer, Write);
        });
    }

    private static void Write(WhyAnswer answer, Page page)
    {
        page.Line(page.Paint.Strong(answer.Name));
        page.Line($"As found {BeliefText.Percent(answer.AsFound)}. Decibans: {answer.PriorDecibans:+0.0;-0.0} before, {answer.PosteriorDecibans:+0.0;-0.0} after.");
        page.Line();
        page.Table(
        [
            ["stepwise", "without it", "what"],
            .. answer.Weights.Select(w => new[] { $"{w.Stepwise,8:+0.0;-0.0;0.0}", $"{w.LeaveOneOut,10:+0.0;-0.0;0.0}", w.What }),
        ]);
        page.Line();
        if (answer.ErrorBound > 0)
        {
            page.Item("", $"Approximate: probabilities may be off by {answer.ErrorBound.ToString("0.######", CultureInfo.InvariantCulture)}, so that small ones have no sure weights.");
        }

        page.Item("", "Stepwise: added when it came, given all before it. Without it: what would be lost, given all others. Ten decibans are a factor of ten in the odds.");
    }
}
