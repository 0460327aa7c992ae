using System.Text.Json;

namespace Undercowl.Jobs;

/// <summary>A picture. Its bytes lie beside the log under their hash; the log stays readable without them.</summary>
/// <param name="Hash">The <c>sha256:</c> of the bytes.</param>
/// <param name="Type">The media type, for example image/jpeg.</param>
/// <param name="Size">The number of bytes, at least 1.</param>
/// <param name="About">The entries it shows; null when none in particular.</param>
/// <param name="Part">The part it shows; null when none in particular.</param>
/// <param name="Words">A caption.</param>
public sealed record Photo(string Hash, string Type, long Size, IReadOnlyList<EntryId>? About = null, PartId? Part = null, string? Words = null) : EntryBody
{
    internal const string KindName = "photo";

    public override string Kind => KindName;

    internal static Photo Read(Members m) => new(
        m.Hash("hash", "the hash of the bytes"),
        m.Text("type", "the media type, for example image/jpeg"),
        m.Whole("size", 1, "the number of bytes"),
        m.OptionalList("about", "the ids of the entries it shows", EntryId.Parse),
        m.OptionalPart("part", "the part it shows"),
        m.OptionalText("words", "a caption"));

    internal override void Write(Utf8JsonWriter json)
    {
        json.Text("hash", Hash);
        json.Text("type", Type);
        json.Whole("size", Size);
        json.List("about", About);
        json.Text("part", Part?.ToString());
        json.Text("words", Words);
    }
}
