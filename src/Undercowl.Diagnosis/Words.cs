using System.Globalization;
using Undercowl.Diagnosis.Engine;
using Undercowl.Jobs;
using Undercowl.Knowledge;

namespace Undercowl.Diagnosis;

/// <summary>Parts, causes and readings in the words that a technician reads.</summary>
internal static class Words
{
    public static string Cause(AspectInstance aspect, int state) =>
        $"{Part(aspect.Part)}{Output(aspect)}: {aspect.Conditions[state - 1].Name}";

    /// <summary>A part and whose it is: <c>ignition coil of cylinder 2</c>. A side is said only where both have one.</summary>
    public static string Part(PartInstance part) => part.Kind.Name + (part.Alone && part.Place.StartsWith("side:", StringComparison.Ordinal) ? "" : Joined(part.Place, "of"));

    /// <summary>Where something is done, to follow its name: <c> at cylinder 2</c>; empty for the engine as a whole.</summary>
    public static string At(string place) => Joined(place, "at");

    /// <summary>Where a check or remedy of a part is done; a side is said only where both have one.</summary>
    /// <param name="model">The engine.</param>
    /// <param name="kind">The sort of part that it is done at.</param>
    /// <param name="place">The place.</param>
    public static string At(EngineModel model, string kind, string place) =>
        place.StartsWith("side:", StringComparison.Ordinal) && model.Parts.Count(p => p.Kind.Id == kind) < 2 ? "" : At(place);

    private static string Joined(string place, string word)
    {
        var colon = place.IndexOf(':', StringComparison.Ordinal);
        return (colon < 0 ? place : place[..colon]) switch
        {
            "engine" => "",
            "cyl" => $" {word} cylinder {place[(colon + 1)..]}",
            "pair" => $" {word} cylinders {place[(colon + 1)..].Replace("+", " and ", StringComparison.Ordinal)}",
            "group" => $" {word} cylinders {place[(colon + 1)..].Replace("+", ", ", StringComparison.Ordinal)}",
            "bank" => $" {word} bank {place[(colon + 1)..]}",
            "side" => $" on the {place[(colon + 1)..]} side",
            _ => $" at {place}",
        };
    }

    /// <summary>A set-up key and its value in words, its cylinder with it.</summary>
    public static string State(EngineModel model, string key, string value)
    {
        var at = key.IndexOf('@', StringComparison.Ordinal);
        return model.SetUpKey(at < 0 ? key : key[..at])?.Values.FirstOrDefault(v => v.Id == value) is { } known
            ? known.Name + (at < 0 ? "" : At(key[(at + 1)..]))
            : $"{key} {value}";
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

    /// <summary>What came of a remedy.</summary>
    public static string Result(RemedyResult came) => came switch
    {
        RemedyResult.Cured => "cured",
        RemedyResult.InPart => "better, not gone",
        RemedyResult.ForATime => "gone for a time, and came back",
        RemedyResult.NoChange => "no change",
        _ => "something else is wrong now",
    };

    private static string Output(AspectInstance aspect) =>
        aspect.Position < 0 || aspect.Part.Cylinders.Length == 1 ? "" : $", cylinder {aspect.Part.Cylinders[aspect.Position].ToString(CultureInfo.InvariantCulture)}";
}
