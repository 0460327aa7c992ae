using System.Text.Json;

namespace Undercowl.Jobs;

/// <summary>Writes members, leaving out what is absent. The order does not matter: the entry is made canonical afterwards.</summary>
internal static class BodyWriting
{
    public static void Text(this Utf8JsonWriter json, string name, string? value)
    {
        if (value is not null)
            json.WriteString(name, CanonicalText.Bytes(value));
    }

    public static void Whole(this Utf8JsonWriter json, string name, long? value)
    {
        if (value is { } number)
            json.WriteNumber(name, number);
    }

    public static void Flag(this Utf8JsonWriter json, string name, bool value)
    {
        if (value)
            json.WriteBoolean(name, true);
    }

    public static void Word<T>(this Utf8JsonWriter json, string name, T? value)
        where T : struct, Enum
    {
        if (value is { } word)
            json.WriteString(name, Words.Of(word));
    }

    public static void Measured(this Utf8JsonWriter json, string name, Measured? value)
    {
        if (value is null)
            return;
        json.WriteStartObject(name);
        json.WriteString("unit", value.Unit);
        json.WriteString("value", value.Value.Text);
        json.WriteEndObject();
    }

    public static void Money(this Utf8JsonWriter json, string name, Money? value)
    {
        if (value is null)
            return;
        json.WriteStartObject(name);
        json.WriteString("currency", value.Currency);
        json.WriteString("value", value.Value.Text);
        json.WriteEndObject();
    }

    public static void Map(this Utf8JsonWriter json, string name, IReadOnlyDictionary<string, string>? map)
    {
        if (map is null)
            return;
        json.WriteStartObject(name);
        foreach (var (key, value) in map)
            json.WriteString(key, CanonicalText.Bytes(value));
        json.WriteEndObject();
    }

    public static void Measurements(this Utf8JsonWriter json, string name, IReadOnlyDictionary<string, Measured>? map)
    {
        if (map is null)
            return;
        json.WriteStartObject(name);
        foreach (var (key, value) in map)
            json.Measured(key, value);
        json.WriteEndObject();
    }

    public static void List<T>(this Utf8JsonWriter json, string name, IReadOnlyList<T>? list)
    {
        if (list is null)
            return;
        json.WriteStartArray(name);
        foreach (var item in list)
            json.WriteStringValue(CanonicalText.Bytes(item?.ToString() ?? ""));
        json.WriteEndArray();
    }

    public static void Embedded(this Utf8JsonWriter json, string name, EmbeddedJson value)
    {
        json.WritePropertyName(name);
        json.WriteRawValue(value.Text);
    }
}
