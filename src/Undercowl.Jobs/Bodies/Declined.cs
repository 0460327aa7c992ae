using System.Text.Json;

namespace Undercowl.Jobs;

/// <summary>A check or remedy was refused, and is not to be proposed again.</summary>
/// <param name="What">The check or remedy by name.</param>
/// <param name="Why">The reason given.</param>
/// <param name="Place">Where; null for everywhere.</param>
/// <param name="By">Who refused; null when the device's user did.</param>
public sealed record Declined(string What, string Why, Place? Place = null, string? By = null) : EntryBody
{
    internal const string KindName = "declined";

    public override string Kind => KindName;

    internal static Declined Read(Members m) => new(
        m.Name("what", "the check or remedy by name"),
        m.Text("why", "the reason"),
        m.OptionalPlace("place", "where"),
        m.OptionalText("by", "who refused"));

    internal override void Write(Utf8JsonWriter json)
    {
        json.Text("what", What);
        json.Text("why", Why);
        json.Text("place", Place?.Text);
        json.Text("by", By);
    }
}
