using System.Globalization;
using Undercowl.Diagnosis.Engine;
using Undercowl.Jobs;
using Undercowl.Knowledge;

namespace Undercowl.Diagnosis;

/// <summary>Parts, causes and readings in the words that a technician reads.</summary>
internal static class Words
{
    public static string Cause(AspectInstance aspect, int state) =>
        $"{aspect.Part.Kind.Name}{At(aspect.Part.Place)}{Output(aspect)}: {aspect.Conditions[state - 1].Name}";

    public static string At(string place)
    {
        var colon = place.IndexOf(':', StringComparison.Ordinal);
        return (colon < 0 ? place : place[..colon]) switch
        {
            "engine" => "",
            "cyl" => $" of cylinder {place[(colon + 1)..]}",
            "pair" => $" of cylinders {place[(colon + 1)..].Replace("+", " and ", StringComparison.Ordinal)}",
            "group" => $" of cylinders {place[(colon + 1)..].Replace("+", ", ", StringComparison.Ordinal)}",
            "bank" => $" of bank {place[(colon + 1)..]}",
            "side" => $" on the {place[(colon + 1)..]} side",
            _ => $" at {place}",
        };
    }

    public static string Reading(Check? check, Reading reading) => reading switch
    {
        ChoiceReading choice => check?.Choices.FirstOrDefault(o => o.Id == choice.Choice)?.Name ?? choice.Choice,
        CountReading count => string.Create(CultureInfo.InvariantCulture, $"{count.K} of {count.N}"),
        NumberReading number => number.Number.ToString(),
        OpenReading => "over range",
        NotDoneReading not => $"could not be done: {not.Why}",
        _ => "unknown reading",
    };

    private static string Output(AspectInstance aspect) =>
        aspect.Position < 0 || aspect.Part.Cylinders.Length == 1 ? "" : $", cylinder {aspect.Part.Cylinders[aspect.Position].ToString(CultureInfo.InvariantCulture)}";
}
