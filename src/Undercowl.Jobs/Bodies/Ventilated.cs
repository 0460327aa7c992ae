using System.Text.Json;

namespace Undercowl.Jobs;

/// <summary>Vapour was let out, and these places were smelt at afterwards and found clear.</summary>
/// <param name="Clear">Where, by name: cowl, bilge, tank… At least one.</param>
/// <param name="Hand">Who smelt; null when the device's user did.</param>
public sealed record Ventilated(IReadOnlyList<string> Clear, string? Hand = null) : EntryBody
{
    internal const string KindName = "ventilated";

    public override string Kind => KindName;

    internal static Ventilated Read(Members m)
    {
        var entry = new Ventilated(m.List("clear", "the places found clear", Members.AsName), m.OptionalText("hand", "who smelt"));
        return entry.Clear.Count > 0
            ? entry
            : throw new JobException("The ventilated entry names no place that is clear.", "Name the places that were smelt at, for example cowl, bilge, tank.");
    }

    internal override void Write(Utf8JsonWriter json)
    {
        json.List("clear", Clear);
        json.Text("hand", Hand);
    }
}
