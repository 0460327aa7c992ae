using System.Text.Json;

namespace Undercowl.Jobs;

/// <summary>
/// What is complained of, by name, in the customer's words, and in which set-up it shows (proof must be given in the
/// same one). Part of <see cref="Opened"/>; on its own a further or a corrected complaint.
/// </summary>
/// <param name="Id">The complaint by name.</param>
/// <param name="SetUp">When it shows, for example cold or under load; empty when not said.</param>
/// <param name="Words">As the customer put it.</param>
public sealed record Complaint(string Id, IReadOnlyDictionary<string, string> SetUp, string? Words = null) : EntryBody
{
    internal const string KindName = "complaint";

    public override string Kind => KindName;

    internal static Complaint Read(Members m) => new(
        m.Name("id", "the complaint by name"),
        m.Map("setUp", "in which set-up it shows"),
        m.OptionalText("words", "the customer's own words"));

    internal override void Write(Utf8JsonWriter json)
    {
        json.Text("id", Id);
        json.Map("setUp", SetUp);
        json.Text("words", Words);
    }
}
