using System.Text.Json;

namespace Undercowl.Jobs;

/// <summary>
/// Something was done to put the engine right. What came of it may be known only later: then a
/// <see cref="Result"/> says it.
/// </summary>
/// <param name="Action">The remedy by name.</param>
/// <param name="Revision">The revision of its description, from 1.</param>
/// <param name="Place">Where.</param>
public sealed record Remedy(string Action, long Revision, Place Place) : EntryBody
{
    internal const string KindName = "remedy";

    public override string Kind => KindName;

    /// <summary>Which output of the thing at that place; null for the thing as a whole.</summary>
    public string? Output { get; init; }

    /// <summary>What came of it; null while that is not known.</summary>
    public RemedyResult? Result { get; init; }

    /// <summary>What was fitted; null when nothing was.</summary>
    public IReadOnlyList<FittedPart>? Parts { get; init; }

    /// <summary>What it was set to, for example gap and torque; null when nothing was set.</summary>
    public IReadOnlyDictionary<string, Measured>? Figures { get; init; }

    /// <summary>The interlocks that withheld it when it was done anyway; null when none did.</summary>
    public IReadOnlyList<string>? Against { get; init; }

    /// <summary>Minutes that it took; null when not noted.</summary>
    public long? Minutes { get; init; }

    /// <summary>Who did it; null when the device's user did.</summary>
    public string? Hand { get; init; }

    /// <summary>Anything to add.</summary>
    public string? Words { get; init; }

    internal static Remedy Read(Members m) => new(
        m.Name("action", "the remedy by name"),
        m.Whole("revision", 1, "the revision of the remedy"),
        m.Place("place", "where it was done"))
    {
        Output = m.OptionalName("output", "which output"),
        Result = m.OptionalOneOf<RemedyResult>("result", "what came of it"),
        Parts = m.OptionalObjects("parts", "what was fitted", "fitted part", FittedPart.Read),
        Figures = m.OptionalMeasurements("figures", "what it was set to"),
        Against = m.OptionalList("against", "the interlocks that withheld it", Members.AsName),
        Minutes = m.OptionalWhole("minutes", 0, "the minutes it took"),
        Hand = m.OptionalText("hand", "who did it"),
        Words = m.OptionalText("words", "anything to add"),
    };

    internal override void Write(Utf8JsonWriter json)
    {
        json.Text("action", Action);
        json.Whole("revision", Revision);
        json.Text("place", Place.Text);
        json.Text("output", Output);
        json.Word("result", Result);
        if (Parts is not null)
        {
            json.WriteStartArray("parts");
            foreach (var part in Parts)
                part.Write(json);
            json.WriteEndArray();
        }

        json.Measurements("figures", Figures);
        json.List("against", Against);
        json.Whole("minutes", Minutes);
        json.Text("hand", Hand);
        json.Text("words", Words);
    }
}
