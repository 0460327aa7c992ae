using System.Text.Json;

namespace Undercowl.Jobs;

/// <summary>
/// What one entry says. One record per kind, in the file of its name; <see cref="UnknownBody"/> for kinds of later
/// versions. Absent members are null, never a made-up value. Not the entry itself, which adds id, device and parents.
/// </summary>
public abstract record EntryBody
{
    /// <summary>The kind as it is written in the log.</summary>
    public abstract string Kind { get; }

    internal abstract void Write(Utf8JsonWriter json);
}

/// <summary>An entry of a kind that this version does not know. It is kept, shown and merged, and has no effect.</summary>
/// <param name="Name">The kind as written.</param>
/// <param name="Json">The whole body in canonical form.</param>
public sealed record UnknownBody(string Name, string Json) : EntryBody
{
    public override string Kind => Name;

    internal override void Write(Utf8JsonWriter json)
    {
        using var document = CanonicalJson.Parse(CanonicalText.Bytes(Json));
        foreach (var member in document.RootElement.EnumerateObject())
            member.WriteTo(json);
    }
}
