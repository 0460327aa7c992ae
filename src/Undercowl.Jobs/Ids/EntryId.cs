using System.Globalization;

namespace Undercowl.Jobs;

/// <summary>
/// The id of one entry: a UUIDv7 (RFC 9562, 5.7), written in lower case with hyphens. Sorts as its text does, which
/// is by the millisecond it was made in. The order of entries is not told by ids but by parents. The default value is
/// no id; it is never written.
/// </summary>
public readonly record struct EntryId : IComparable<EntryId>
{
    // Two halves: nothing that holds a 128-bit number is compiled ahead of time, nor is any collection of it.
    private readonly ulong high;
    private readonly ulong low;

    private EntryId(ulong high, ulong low) => (this.high, this.low) = (high, low);

    /// <summary>True for the default value.</summary>
    public bool IsNone => (high | low) == 0;

    /// <summary>Milliseconds since 1970-01-01 UTC by the clock of the device that made the id.</summary>
    public long Milliseconds => (long)(high >> 16);

    /// <summary>The 74 bits that are not time, version or variant, as one number.</summary>
    internal UInt128 Tail => ((UInt128)(high & 0xFFF) << 62) | (low & ((1UL << 62) - 1));

    internal static UInt128 TailLimit => UInt128.One << 74;

    /// <summary>Lays an id out as RFC 9562, 5.7 says: 48 bits of time, version 7, 12 bits, variant 10, 62 bits.</summary>
    internal static EntryId Of(long milliseconds, UInt128 tail) => new(
        ((ulong)milliseconds << 16) | (7UL << 12) | (ulong)(tail >> 62),
        (2UL << 62) | (ulong)(tail & ((1UL << 62) - 1)));

    /// <summary>Parses or throws <see cref="JobException"/>.</summary>
    public static EntryId Parse(string text) => TryParse(text, out var id)
        ? id
        : throw new JobException($"\"{text}\" is not an entry id.", "An entry id is a UUID of version 7 in lower case, for example 017f22e2-79b0-7cc3-98c4-dc0c0c07398f.");

    /// <summary>Takes lower case only: two spellings of one id would sort and compare apart.</summary>
    public static bool TryParse(string? text, out EntryId id)
    {
        id = default;
        if (text is not { Length: 36 } || text[8] != '-' || text[13] != '-' || text[18] != '-' || text[23] != '-')
            return false;
        if (text[14] != '7' || text[19] is not ('8' or '9' or 'a' or 'b') || text.Any(char.IsAsciiLetterUpper))
            return false;
        var digits = text.Replace("-", "", StringComparison.Ordinal);
        if (digits.Length != 32 || !Half(digits.AsSpan(0, 16), out var high) || !Half(digits.AsSpan(16), out var low))
            return false;
        id = new EntryId(high, low);
        return true;

        static bool Half(ReadOnlySpan<char> digits, out ulong half) =>
            ulong.TryParse(digits, NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture, out half);
    }

    public int CompareTo(EntryId other) => high == other.high ? low.CompareTo(other.low) : high.CompareTo(other.high);

    public static bool operator <(EntryId left, EntryId right) => left.CompareTo(right) < 0;

    public static bool operator >(EntryId left, EntryId right) => left.CompareTo(right) > 0;

    public static bool operator <=(EntryId left, EntryId right) => left.CompareTo(right) <= 0;

    public static bool operator >=(EntryId left, EntryId right) => left.CompareTo(right) >= 0;

    public override string ToString() => string.Create(36, this, static (span, id) =>
    {
        Span<char> digits = stackalloc char[32];
        id.high.TryFormat(digits, out _, "x16", CultureInfo.InvariantCulture);
        id.low.TryFormat(digits[16..], out _, "x16", CultureInfo.InvariantCulture);
        var from = 0;
        for (var to = 0; to < 36; to++)
            span[to] = to is 8 or 13 or 18 or 23 ? '-' : digits[from++];
    });
}
