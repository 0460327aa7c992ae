using System.Collections;
using System.Text;
using System.Text.Json;

namespace Undercowl.Jobs.Tests.Bodies;

/// <summary>All texts and numbers that a body holds, however deep, by reflection: the slow way to know what must be in the bytes.</summary>
internal static class Flat
{
    public static IEnumerable<string> TextsOf(object? value)
    {
        switch (value)
        {
            case null or false or UnknownBody or UnknownReading or EmbeddedJson:
                return [];
            case string text:
                return [text];
            case true:
                return ["true"];
            case long or DecimalText or Place or PartId or EntryId:
                return [value.ToString()!];
            case Enum word:
                return [Words(word)];
            case IEnumerable many:
                return many.Cast<object>().SelectMany(TextsOf);
            default:
                return value.GetType().GetProperties().Where(property => property.Name is not ("EqualityContract" or "Kind"))
                    .SelectMany(property => TextsOf(property.GetValue(value)));
        }
    }

    public static string Escaped(string text) => Encoding.UTF8.GetString(CanonicalJson.Of(JsonSerializer.SerializeToUtf8Bytes(text))).Trim('"');

    private static string Words(Enum word) =>
        string.Concat(word.ToString().Select((c, i) => char.IsUpper(c) && i > 0 ? "-" + char.ToLowerInvariant(c) : char.ToLowerInvariant(c).ToString()));
}
