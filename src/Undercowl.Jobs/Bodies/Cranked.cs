using System.Text.Json;

namespace Undercowl.Jobs;

/// <summary>The starter turned the engine for some seconds: what the battery, the starter's rest and the plugs have had.</summary>
/// <param name="Seconds">How long, whole seconds, at least 1.</param>
/// <param name="Act">Binds it to the findings of the same act; null when nothing was read.</param>
public sealed record Cranked(long Seconds, string? Act = null) : EntryBody
{
    internal const string KindName = "cranked";

    public override string Kind => KindName;

    internal static Cranked Read(Members m) => new(
        m.Whole("seconds", 1, "how long"),
        m.OptionalText("act", "what binds it to the findings of the same act"));

    internal override void Write(Utf8JsonWriter json)
    {
        json.Whole("seconds", Seconds);
        json.Text("act", Act);
    }
}
