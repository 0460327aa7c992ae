using System.CommandLine;
using Undercowl.Diagnosis.Readings;

namespace Undercowl.Cli.Commands;

internal static class SpecsCommand
{
    public const string Summary = "Record this engine's own figure from its service manual; it overrides the generic one.";

    public static Verb Build(Shell shell)
    {
        var job = CommonArguments.Job();
        var part = new Argument<string>("PART") { Description = "A part, for example PART or PART@cyl:2." };
        var item = new Argument<string>("ITEM") { Description = "Which figure, for example resistance." };
        var low = new Option<string?>("--low") { HelpName = "VALUE", Description = "The least good value, with its unit." };
        var high = new Option<string?>("--high") { HelpName = "VALUE", Description = "The greatest good value, with its unit." };
        var nominal = new Option<string?>("--nominal") { HelpName = "VALUE", Description = "The value meant, with its unit." };
        var origin = new Option<string>("--origin") { HelpName = "TEXT", Description = "Where it was read, for example \"service manual, ignition chapter\".", Required = true };
        return new Verb(shell, "specs", Summary, "undercowl specs boat7.jsonl PART ITEM --low 200ohm --high 300ohm --origin \"service manual, page 5-12\"")
            .Takes(job, part, item, low, high, nominal, origin).Does(parsed => Recording.Of(shell, parsed.GetRequiredValue(job), at => OwnFigure.Of(
                at.Diagnosis, parsed.GetRequiredValue(part), parsed.GetRequiredValue(item), parsed.GetRequiredValue(origin),
                parsed.GetValue(low), parsed.GetValue(high), parsed.GetValue(nominal))));
    }
}
