using System.Text.Json;

namespace Undercowl.Jobs;

/// <summary>Free text. It moves no belief.</summary>
/// <param name="Text">The note.</param>
/// <param name="About">The entries it is about; null when about none in particular.</param>
public sealed record Note(string Text, IReadOnlyList<EntryId>? About = null) : EntryBody
{
    internal const string KindName = "note";

    public override string Kind => KindName;

    internal static Note Read(Members m) => new(
        m.Text("text", "the note"),
        m.OptionalList("about", "the ids of the entries it is about", EntryId.Parse));

    internal override void Write(Utf8JsonWriter json)
    {
        json.Text("text", Text);
        json.List("about", About);
    }
}
