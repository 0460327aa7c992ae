using System.CommandLine;
using Undercowl.Diagnosis;
using Undercowl.Diagnosis.Readings;
using Undercowl.Jobs;

namespace Undercowl.Cli.Commands;

internal static class AmbientCommand
{
    public const string Summary = "Record the air around the engine; spark, resistance and compression are judged by it.";

    public static Verb Build(Shell shell)
    {
        var job = CommonArguments.Job();
        var temperature = new Option<string?>("--temperature") { HelpName = "12C", Description = "Air temperature." };
        var pressure = new Option<string?>("--pressure") { HelpName = "1013hPa", Description = "Air pressure at the place, not reduced to sea level." };
        var altitude = new Option<string?>("--altitude") { HelpName = "300m", Description = "Height above the sea." };
        return new Verb(shell, "ambient", Summary, "undercowl ambient boat7.jsonl --temperature 12C", "undercowl ambient boat7.jsonl --temperature 55F --pressure 1013hPa --altitude 300m")
            .Takes(job, temperature, pressure, altitude).Does(parsed => Recording.Of(shell, parsed.GetRequiredValue(job), _ => Drafting.Air(new Ambient(
                Value(parsed.GetValue(temperature), "°C", "12C or 55F"),
                Value(parsed.GetValue(pressure), "hPa", "1013hPa or 101.3kPa"),
                Value(parsed.GetValue(altitude), "m", "300m or 980ft")))));
    }

    private static Measured? Value(string? text, string unit, string example) => text is null
        ? null
        : Measurement.TryParse(text, unit) ?? throw new Refusal($"\"{text}\" is no measurement.", $"Write for example {example}.");
}
