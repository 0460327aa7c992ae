using System.Collections;
using System.Text;
using System.Text.Json;

namespace Undercowl.Jobs.Tests.Bodies;

/// <summary>All values that a body holds, however deep: out of the record by reflection, and out of its JSON. Two ways that must agree.</summary>
internal static class Flat
{
    public static IEnumerable<string> ValuesOf(object? value)
    {
        switch (value)
        {
            case null or false:
                return [];
            case string text:
                return [text];
            case true or OpenReading:
                return ["true"];
            case long or DecimalText or Place or PartId or EntryId:
                return [value.ToString()!];
            case Enum word:
                return [Words(word)];
            case EmbeddedJson embedded:
                return LeavesOf(embedded.Text);
            case UnknownBody unknown:
                return LeavesOf(unknown.Json);
            case UnknownReading unknown:
                return LeavesOf(unknown.Json);
            case IReadOnlyDictionary<string, string> map:
                return map.Values;
            case IReadOnlyDictionary<string, Measured> map:
                return map.Values.SelectMany(ValuesOf);
            case IEnumerable many:
                return many.Cast<object>().SelectMany(ValuesOf);
            default:
                return value.GetType().GetProperties().Where(property => property.Name != "Kind").SelectMany(property => ValuesOf(property.GetValue(value)));
        }
    }

    public static IEnumerable<string> LeavesOf(JsonElement value) => value.ValueKind switch
    {
        JsonValueKind.Object => value.EnumerateObject().SelectMany(member => LeavesOf(member.Value)),
        JsonValueKind.Array => value.EnumerateArray().SelectMany(LeavesOf),
        JsonValueKind.String => [value.GetString()!],
        _ => [value.GetRawText()],
    };

    private static string[] LeavesOf(string json)
    {
        using var document = JsonDocument.Parse(json);
        return [.. LeavesOf(document.RootElement)];
    }

    private static string Words(Enum word)
    {
        var text = new StringBuilder();
        foreach (var c in word.ToString())
            text.Append(char.IsUpper(c) && text.Length > 0 ? "-" : "").Append(char.ToLowerInvariant(c));
        return text.ToString();
    }
}
