using System.Security.Cryptography;

namespace Undercowl.Jobs;

/// <summary>The text <c>sha256:</c> with 64 lower-case hexadecimal digits by which bytes kept elsewhere are named.</summary>
public static class Sha256Text
{
    private const string Prefix = "sha256:";

    /// <summary>Names some bytes.</summary>
    public static string Of(ReadOnlySpan<byte> bytes) => Prefix + Convert.ToHexStringLower(SHA256.HashData(bytes));

    /// <summary>True when the text has that form; whether such bytes exist is not asked.</summary>
    public static bool Is(string text) => text.Length == 71 && text.StartsWith(Prefix, StringComparison.Ordinal)
        && text.Skip(7).All(char.IsAsciiHexDigitLower);
}
