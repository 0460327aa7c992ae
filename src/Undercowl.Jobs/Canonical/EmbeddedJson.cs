using System.Text;
using System.Text.Json;

namespace Undercowl.Jobs;

/// <summary>
/// A JSON object of somebody else's making, carried in an entry in canonical form, for example the composed
/// engine layout. Not interpreted here. Two are equal when they are the same JSON value. There is no default:
/// an absent one is a null reference.
/// </summary>
public sealed record EmbeddedJson
{
    private EmbeddedJson(string text) => Text = text;

    /// <summary>The object in canonical form.</summary>
    public string Text { get; }

    /// <summary>Takes any spelling of a JSON object. Throws <see cref="JobException"/> on anything else, and on numbers that are not whole.</summary>
    public static EmbeddedJson Of(string json)
    {
        using var document = CanonicalJson.Parse(CanonicalText.Bytes(json));
        return Of(document.RootElement);
    }

    internal static EmbeddedJson Of(JsonElement value) => value.ValueKind == JsonValueKind.Object
        ? new EmbeddedJson(Encoding.UTF8.GetString(CanonicalJson.Of(value)))
        : throw new JobException("An embedded document is not a JSON object.", "Give it as an object in braces.");

    public override string ToString() => Text;
}
