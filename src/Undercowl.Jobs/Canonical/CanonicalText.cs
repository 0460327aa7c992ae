using System.Buffers;
using System.Text;

namespace Undercowl.Jobs;

/// <summary>Writes one text as RFC 8785, 3.2.2.2 asks: seven two-letter escapes, \u00xx for other controls, all else as it is.</summary>
internal static class CanonicalText
{
    private static readonly UTF8Encoding Strict = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    private static readonly SearchValues<char> Escaped = SearchValues.Create(
        "\0\u0001\u0002\u0003\u0004\u0005\u0006\a\b\t\n\v\f\r\u000e\u000f\u0010\u0011\u0012\u0013\u0014\u0015\u0016\u0017\u0018\u0019\u001a\u001b\u001c\u001d\u001e\u001f\"\\");

    public static void Write(string text, IBufferWriter<byte> output)
    {
        output.Write("\""u8);
        var rest = text.AsSpan();
        while (rest.IndexOfAny(Escaped) is var at and >= 0)
        {
            Encoding.UTF8.GetBytes(rest[..at], output);
            Escape(rest[at], output);
            rest = rest[(at + 1)..];
        }

        Encoding.UTF8.GetBytes(rest, output);
        output.Write("\""u8);
    }

    /// <summary>
    /// The UTF-8 of a text. Half a surrogate pair, which .NET would write as a replacement character, is refused: a
    /// record does not change what was said.
    /// </summary>
    public static byte[] Bytes(string text)
    {
        try
        {
            return Strict.GetBytes(text);
        }
        catch (EncoderFallbackException error)
        {
            throw new JobException("A text holds half of a surrogate pair, which is not a character.", "Enter the text again.", error);
        }
    }

    public static void Ascii(IBufferWriter<byte> output, ReadOnlySpan<char> text) => Encoding.ASCII.GetBytes(text, output);

    private static void Escape(char character, IBufferWriter<byte> output)
    {
        switch (character)
        {
            case '"': output.Write("\\\""u8); break;
            case '\\': output.Write("\\\\"u8); break;
            case '\b': output.Write("\\b"u8); break;
            case '\t': output.Write("\\t"u8); break;
            case '\n': output.Write("\\n"u8); break;
            case '\f': output.Write("\\f"u8); break;
            case '\r': output.Write("\\r"u8); break;
            default:
                output.Write("\\u00"u8);
                output.Write([HexDigit(character >> 4), HexDigit(character & 15)]);
                break;
        }
    }

    private static byte HexDigit(int value) => "0123456789abcdef"u8[value];
}
