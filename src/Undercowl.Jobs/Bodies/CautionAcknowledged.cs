using System.Text.Json;

namespace Undercowl.Jobs;

/// <summary>A caution was read and acknowledged, for one set-up.</summary>
/// <param name="Caution">The caution by name.</param>
/// <param name="SetUp">The set-up it was acknowledged for; null for the whole job.</param>
/// <param name="Hand">Who did; null when the device's user did.</param>
public sealed record CautionAcknowledged(string Caution, IReadOnlyDictionary<string, string>? SetUp = null, string? Hand = null) : EntryBody
{
    internal const string KindName = "caution-acknowledged";

    public override string Kind => KindName;

    internal static CautionAcknowledged Read(Members m) => new(
        m.Name("caution", "the caution by name"),
        m.OptionalMap("setUp", "the set-up it holds for"),
        m.OptionalText("hand", "who did"));

    internal override void Write(Utf8JsonWriter json)
    {
        json.Text("caution", Caution);
        json.Map("setUp", SetUp);
        json.Text("hand", Hand);
    }
}
