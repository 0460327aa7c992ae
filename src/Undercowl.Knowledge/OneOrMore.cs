using System.Text.Json;
using System.Text.Json.Serialization;

namespace Undercowl.Knowledge;

/// <summary>A text or a list of texts: <c>hot</c> and <c>[warm, hot]</c> are both written in the knowledge files.</summary>
[JsonConverter(typeof(OneOrMoreConverter))]
public sealed class OneOrMore(IReadOnlyList<string> values)
{
    public IReadOnlyList<string> Values { get; } = values;

    public bool Contains(string value)
    {
        foreach (var v in Values)
        {
            if (v == value)
            {
                return true;
            }
        }

        return false;
    }
}

/// <summary>Reads a string or an array of strings; writes the shorter form.</summary>
public sealed class OneOrMoreConverter : JsonConverter<OneOrMore>
{
    public override OneOrMore Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
    {
        if (reader.TokenType == JsonTokenType.String)
        {
            return new OneOrMore([reader.GetString()!]);
        }

        if (reader.TokenType != JsonTokenType.StartArray)
        {
            throw new JsonException("a text or a list of texts is wanted here; put quotes around a number");
        }

        var values = new List<string>();
        while (reader.Read() && reader.TokenType != JsonTokenType.EndArray)
        {
            if (reader.TokenType != JsonTokenType.String)
            {
                throw new JsonException("each entry of this list must be a text; put quotes around a number");
            }

            values.Add(reader.GetString()!);
        }

        return new OneOrMore(values);
    }

    public override void Write(Utf8JsonWriter writer, OneOrMore value, JsonSerializerOptions options)
    {
        ArgumentNullException.ThrowIfNull(writer);
        ArgumentNullException.ThrowIfNull(value);
        if (value.Values.Count == 1)
        {
            writer.WriteStringValue(value.Values[0]);
            return;
        }

        writer.WriteStartArray();
        foreach (var v in value.Values)
        {
            writer.WriteStringValue(v);
        }

        writer.WriteEndArray();
    }
}
