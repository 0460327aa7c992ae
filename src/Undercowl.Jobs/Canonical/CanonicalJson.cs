using System.Buffers;
using System.Text.Json;
using System.Text.Unicode;

namespace Undercowl.Jobs;

/// <summary>
/// The one way in which a job's JSON is written: RFC 8785, with numbers narrowed to whole ones. Not a general
/// RFC 8785 writer: a fraction, an exponent, minus zero and anything beyond ±(2^53 - 1) is refused, because a
/// number that a binary64 might round has no place in a record. Measured numbers are text (<see cref="DecimalText"/>).
/// </summary>
public static class CanonicalJson
{
    /// <summary>Nesting allowed in one entry, counting the entry itself.</summary>
    public const int MaxDepth = 64;

    private const long MaxSafeInteger = (1L << 53) - 1;

    private static readonly JsonDocumentOptions Strict = new() { MaxDepth = MaxDepth, AllowDuplicateProperties = false };

    /// <summary>The canonical bytes of some JSON text in UTF-8. Throws <see cref="JobException"/> when it is not JSON or cannot be kept exactly.</summary>
    public static byte[] Of(ReadOnlyMemory<byte> json)
    {
        using var document = Parse(json);
        return Of(document.RootElement);
    }

    /// <summary>The canonical bytes of a parsed value.</summary>
    public static byte[] Of(JsonElement value)
    {
        var output = new ArrayBufferWriter<byte>(512);
        try
        {
            Write(value, output);
        }
        catch (InvalidOperationException error)
        {
            throw HalfPair(error);
        }

        return output.WrittenSpan.ToArray();
    }

    internal static JsonDocument Parse(ReadOnlyMemory<byte> json)
    {
        if (!Utf8.IsValid(json.Span))
            throw new JobException("The text is not UTF-8.", "Save it as UTF-8; one byte may have been changed.");
        try
        {
            return JsonDocument.Parse(json, Strict);
        }
        catch (InvalidOperationException error)
        {
            throw HalfPair(error);
        }
        catch (JsonException error)
        {
            throw new JobException($"The text is not JSON: {Reason(error)}", "Restore the line from a copy of the job, or move it out of the file.", error);
        }
    }

    // System.Text.Json meets half a surrogate pair, written as \ud800, only when it unescapes a text: no UTF-8 can hold it.
    private static JobException HalfPair(InvalidOperationException error) => new(
        "A text holds half of a surrogate pair, which is not a character.",
        "Replace the escaped \\ud800 to \\udfff by the character that was meant.", error);

    private static string Reason(JsonException error)
    {
        var end = error.Message.IndexOf(" LineNumber:", StringComparison.Ordinal);
        var text = end < 0 ? error.Message : error.Message[..end];
        return error.BytePositionInLine is { } at ? $"{text} (at byte {at + 1})" : text;
    }

    private static void Write(JsonElement value, ArrayBufferWriter<byte> output)
    {
        switch (value.ValueKind)
        {
            case JsonValueKind.Object:
                WriteObject(value, output);
                break;
            case JsonValueKind.Array:
                Ascii(output, "["u8);
                var first = true;
                foreach (var item in value.EnumerateArray())
                {
                    if (!first)
                        Ascii(output, ","u8);
                    first = false;
                    Write(item, output);
                }

                Ascii(output, "]"u8);
                break;
            case JsonValueKind.String:
                CanonicalText.Write(value.GetString()!, output);
                break;
            case JsonValueKind.Number:
                WriteInteger(value, output);
                break;
            case JsonValueKind.True:
                Ascii(output, "true"u8);
                break;
            case JsonValueKind.False:
                Ascii(output, "false"u8);
                break;
            default:
                Ascii(output, "null"u8);
                break;
        }
    }

    private static void WriteObject(JsonElement value, ArrayBufferWriter<byte> output)
    {
        var members = value.EnumerateObject().ToArray();
        // RFC 8785, 3.2.3: names sort by their UTF-16 code units, which is what an ordinal comparison of .NET strings does.
        var names = Array.ConvertAll(members, member => member.Name);
        Array.Sort(names, members, StringComparer.Ordinal);
        Ascii(output, "{"u8);
        for (var i = 0; i < members.Length; i++)
        {
            if (i > 0)
                Ascii(output, ","u8);
            CanonicalText.Write(names[i], output);
            Ascii(output, ":"u8);
            Write(members[i].Value, output);
        }

        Ascii(output, "}"u8);
    }

    private static void WriteInteger(JsonElement value, ArrayBufferWriter<byte> output)
    {
        var text = value.GetRawText();
        var whole = value.TryGetInt64(out var number) && Math.Abs((decimal)number) <= MaxSafeInteger;
        if (!whole || text == "-0" || text.AsSpan().ContainsAny(".eE"))
        {
            throw new JobException(
                $"The number {text} is not a whole number that every program reads alike.",
                "Write a measured number as text with its unit, for example {\"unit\":\"mm\",\"value\":\"0.9\"}.");
        }

        CanonicalText.Ascii(output, text);
    }

    private static void Ascii(ArrayBufferWriter<byte> output, ReadOnlySpan<byte> bytes) => output.Write(bytes);
}
