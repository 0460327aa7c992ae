using System.Text.Json;

namespace Undercowl.Jobs;

/// <summary>
/// One reading, with all that it takes to understand it later. Never edited: a later <see cref="Withdrawn"/> takes it back.
/// </summary>
/// <param name="Check">The check by name.</param>
/// <param name="Revision">The revision of the check's description that was followed, from 1.</param>
/// <param name="Place">Where it was done.</param>
/// <param name="SetUp">The whole set-up, resolved when it was recorded; empty when nothing was changed.</param>
/// <param name="Occasion">The stretch of time in which passing states held: by custom the id of the entry that began it.</param>
/// <param name="Hand">Who looked.</param>
/// <param name="Value">The reading.</param>
public sealed record Finding(
    string Check, long Revision, Place Place, IReadOnlyDictionary<string, string> SetUp, string Occasion, string Hand, Reading Value) : EntryBody
{
    internal const string KindName = "finding";

    public override string Kind => KindName;

    /// <summary>Which output of the thing at that place; null for the thing as a whole.</summary>
    public string? Output { get; init; }

    /// <summary>The tool used; null for eyes, ears, nose and fingers.</summary>
    public string? Tool { get; init; }

    /// <summary>True when it was told by somebody not trained to tell, for example over the phone.</summary>
    public bool Hearsay { get; init; }

    /// <summary>Readings of one act (one crank, one look) carry the same text here; null for an act of its own.</summary>
    public string? Act { get; init; }

    /// <summary>The interlocks that withheld the check when it was done anyway; null when none did.</summary>
    public IReadOnlyList<string>? Against { get; init; }

    /// <summary>Minutes that the check took, set-up included; null when not noted.</summary>
    public long? Minutes { get; init; }

    /// <summary>Anything to add.</summary>
    public string? Words { get; init; }

    internal static Finding Read(Members m)
    {
        var reading = m.Inner("reading", "reading", "what the check gave");
        var finding = new Finding(
            m.Name("check", "the check by name"),
            m.Whole("revision", 1, "the revision of the check"),
            m.Place("place", "where it was done"),
            m.Map("setUp", "the whole set-up"),
            m.Text("occasion", "the stretch of time it belongs to"),
            m.Text("hand", "who looked"),
            Reading.Read(reading))
        {
            Output = m.OptionalName("output", "which output"),
            Tool = m.OptionalName("tool", "the tool by name"),
            Hearsay = m.Flag("hearsay", "told by somebody untrained"),
            Act = m.OptionalText("act", "what binds the readings of one act"),
            Against = m.OptionalList("against", "the interlocks that withheld it", Members.AsName),
            Minutes = m.OptionalWhole("minutes", 0, "the minutes it took"),
            Words = m.OptionalText("words", "anything to add"),
        };
        reading.Finish();
        return finding;
    }

    internal override void Write(Utf8JsonWriter json)
    {
        json.Text("check", Check);
        json.Whole("revision", Revision);
        json.Text("place", Place.Text);
        json.Map("setUp", SetUp);
        json.Text("occasion", Occasion);
        json.Text("hand", Hand);
        json.WriteStartObject("reading");
        Value.Write(json);
        json.WriteEndObject();
        json.Text("output", Output);
        json.Text("tool", Tool);
        json.Flag("hearsay", Hearsay);
        json.Text("act", Act);
        json.List("against", Against);
        json.Whole("minutes", Minutes);
        json.Text("words", Words);
    }
}
