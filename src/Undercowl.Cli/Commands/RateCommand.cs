using System.CommandLine;
using Undercowl.Jobs;

namespace Undercowl.Cli.Commands;

internal static class RateCommand
{
    public const string Summary = "Record what an hour of work costs; proposals are ranked by it.";

    public static Verb Build(Shell shell)
    {
        var job = CommonArguments.Job();
        var amount = new Argument<string>("AMOUNT") { Description = "For an hour, as digits." };
        var currency = new Argument<string>("CURRENCY") { Description = "Three-letter code." };
        return new Verb(shell, "rate", Summary, "undercowl rate boat7.jsonl 85 EUR").Takes(job, amount, currency).Does(parsed =>
            Recording.Of(shell, parsed.GetRequiredValue(job), _ => new Rate(Positive(Money.Of(parsed.GetRequiredValue(amount), parsed.GetRequiredValue(currency))))));
    }

    /// <summary>Steps are ranked by cost: at nothing an hour they would all be alike.</summary>
    private static Money Positive(Money perHour) =>
        perHour.Value.Value > 0 ? perHour : throw new Refusal($"{perHour} is no price of an hour.", "Give an amount above 0, for example 85.");
}
