using System.CommandLine;
using Undercowl.Diagnosis;
using Undercowl.Diagnosis.Readings;
using Undercowl.Jobs;

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
            .Takes(job, part, item, low, high, nominal, origin).Does(parsed => Recording.Of(shell, parsed.GetRequiredValue(job), at =>
            {
                var meant = PartId.Parse(parsed.GetRequiredValue(part));
                var parts = at.Diagnosis.Layout.Parts;
                if (!parts.Any(p => p.Part == meant.Kind))
                {
                    throw new DiagnosisException($"There is no part \"{meant.Kind}\" on this engine.", Near.Mend(meant.Kind, parts.Select(p => p.Part)));
                }

                var figure = parsed.GetRequiredValue(item);
                var generic = shell.Knowledge.Known.Specs.Where(s => s.Only.Holds(at.Diagnosis.Layout)).ToArray();
                var unit = generic.FirstOrDefault(s => s.Item == figure)?.Unit
                    ?? throw new DiagnosisException($"No check is judged by a figure \"{figure}\".", Near.Mend(figure, generic.Select(s => s.Item)));
                return new Specs(
                    meant, figure, parsed.GetRequiredValue(origin),
                    Value(parsed.GetValue(low), unit), Value(parsed.GetValue(high), unit), Value(parsed.GetValue(nominal), unit));
            }));
    }

    private static Measured? Value(string? text, string unit) => text is null
        ? null
        : Measurement.TryParse(text, unit) ?? throw new Refusal($"\"{text}\" is no measurement.", $"Write a number with its unit, for example 250{unit}.");
}
