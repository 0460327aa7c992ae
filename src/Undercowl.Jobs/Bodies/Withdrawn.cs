using System.Text.Json;

namespace Undercowl.Jobs;

/// <summary>
/// An earlier entry no longer holds. It stays in the log. Withdrawing a withdrawal re-instates what that one withdrew.
/// </summary>
/// <param name="Entry">The entry taken back; it must be among this one's causal ancestors to have effect.</param>
/// <param name="Why">The reason.</param>
public sealed record Withdrawn(EntryId Entry, string Why) : EntryBody
{
    internal const string KindName = "withdrawn";

    public override string Kind => KindName;

    internal static Withdrawn Read(Members m) => new(
        m.Entry("entry", "the id of the entry taken back"),
        m.Text("why", "the reason"));

    internal override void Write(Utf8JsonWriter json)
    {
        json.Text("entry", Entry.ToString());
        json.Text("why", Why);
    }
}
