using System.Text.Json;

namespace Undercowl.Jobs;

/// <summary>An answer that an interlock asked for: air clear, leak stopped, cylinders cleared, holes closed. The latest wins.</summary>
/// <param name="Id">The question by name.</param>
/// <param name="State">The answer by name. Unknown is an answer, and not a safe one.</param>
/// <param name="Place">Where; null for the engine as a whole.</param>
/// <param name="Hand">Who says so; null when the device's user does.</param>
public sealed record Interlock(string Id, string State, Place? Place = null, string? Hand = null) : EntryBody
{
    /// <summary>The state of a condition that is met; every other state is taken as not met.</summary>
    public const string Met = "met";

    internal const string KindName = "interlock";

    public override string Kind => KindName;

    internal static Interlock Read(Members m) => new(
        m.Name("id", "what the interlock asked, by name"),
        m.Name("state", "the answer by name"),
        m.OptionalPlace("place", "where"),
        m.OptionalText("hand", "who says so"));

    internal override void Write(Utf8JsonWriter json)
    {
        json.Text("id", Id);
        json.Text("state", State);
        json.Text("place", Place?.Text);
        json.Text("hand", Hand);
    }
}
