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
        var audit = new Option<bool>("--audit") { Description = "Show every number that touched it, with its source and the line it stands on." };
        var instead = new Option<string[]>("--with") { HelpName = "NUMBER=VALUE", Description = "With --audit: put another value in a number's place and show the ranking then.", AllowMultipleArgumentsPerToken = true };
        return new Verb(shell, "why", Summary, "undercowl why boat7.jsonl PART@cyl:2.ASPECT=CONDITION", "undercowl why boat7.jsonl PART@cyl:2.ASPECT=CONDITION --audit").Takes(job, cause, audit, instead).Does(parsed =>
        {
            using var open = JobAtHand.Read(shell, parsed.GetRequiredValue(job));
            var with = parsed.GetValue(instead) ?? [];
            if (parsed.GetValue(audit) || with.Length > 0)
            {
                return AuditText.Of(shell, open, parsed.GetRequiredValue(cause), with);
            }

            return Answer.Of(open.Diagnosis.Why(parsed.GetRequiredValue(cause)), AnswerJson.Default.WhyAnswer, Write);
        });
    }

    private static void Write(WhyAnswer answer, Page page)
    {
        page.Line(page.Paint.Strong(answer.Name));
        foreach (var sentence in answer.Saying)
        {
            page.Item("  ", sentence);
        }

        page.Line();
        page.Line($"Decibans: {Decibans(answer.PriorDecibans, Beyond(answer.PriorDecibans))} before, {Decibans(answer.PosteriorDecibans, Beyond(answer.PosteriorDecibans))} after.");
        page.Line();
        page.Table(
        [
            ["stepwise", "without it", "what"],
            .. answer.Weights.Select(w => new[] { $"{Decibans(w.Stepwise, w.StepwiseAtLeast),8}", $"{Decibans(w.LeaveOneOut, w.LeaveOneOutAtLeast),10}", w.What }),
        ]);
        page.Line();
        if (answer.ErrorBound > 0)
        {
            page.Item("", $"Approximate: probabilities may be off by {answer.ErrorBound.ToString("0.######", CultureInfo.InvariantCulture)}, so that small ones have no sure weights.");
        }

        if (answer.Weights.Any(w => w.StepwiseAtLeast || w.LeaveOneOutAtLeast))
        {
            page.Item("", $"> and <: that or beyond, as odds are told to {WhyAnswer.Most:0} decibans either way.");
        }

        page.Item("", "Stepwise: added when it came, given all before it. Without it: what would be lost, given all others. Ten decibans are a factor of ten in the odds.");
    }

    private static bool Beyond(double decibans) => Math.Abs(decibans) >= WhyAnswer.Most;

    private static string Decibans(double value, bool beyond) => (beyond ? value < 0 ? "<" : ">" : "") + value.ToString("+0.0;-0.0;0.0", CultureInfo.InvariantCulture);
}
