using System.Text.Json;

namespace Undercowl.Jobs;

/// <summary>The engine as it stands was changed apart from a check: the stop wire is back on, the plugs are out.</summary>
/// <param name="Change">What changed, and to what.</param>
/// <param name="Place">Where; null when the keys say it or it is the engine as a whole.</param>
public sealed record SetUpChange(IReadOnlyDictionary<string, string> Change, Place? Place = null) : EntryBody
{
    internal const string KindName = "set-up";

    public override string Kind => KindName;

    internal static SetUpChange Read(Members m)
    {
        var change = new SetUpChange(m.Map("change", "what changed, and to what"), m.OptionalPlace("place", "where"));
        return change.Change.Count > 0
            ? change
            : throw new JobException("The set-up change changes nothing.", "Name what changed, for example \"cover\":\"on\".");
    }

    internal override void Write(Utf8JsonWriter json)
    {
        json.Map("change", Change);
        json.Text("place", Place?.Text);
    }
}
