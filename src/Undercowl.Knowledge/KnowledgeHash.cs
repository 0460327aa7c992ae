using System.Security.Cryptography;

namespace Undercowl.Knowledge;

/// <summary>Names compiled knowledge by its bytes, so that a job can say which it was opened with.</summary>
public static class KnowledgeHash
{
    /// <summary><c>sha256:</c> and 64 lower-case hexadecimal digits (FIPS 180-4) over the compiled JSON.</summary>
    public static string Of(ReadOnlySpan<byte> compiled) => "sha256:" + Convert.ToHexStringLower(SHA256.HashData(compiled));
}
