using System.Globalization;
using CsCheck;

namespace Undercowl.Jobs.Tests.Ids;

public sealed class EntryIdTests
{
    // certified: RFC 9562, appendix A.6: unix_ts_ms 017F22E279B0, rand_a CC3, rand_b 18C4DC0C0C07398F.
    private const string Published = "017f22e2-79b0-7cc3-98c4-dc0c0c07398f";
    private const long PublishedMilliseconds = 0x017F22E279B0;

    [Fact]
    public void The_published_fields_give_the_published_id()
    {
        var tail = ((UInt128)0xCC3 << 62) | 0x18C4DC0C0C07398F;
        Assert.Equal(Published, EntryId.Of(PublishedMilliseconds, tail).ToString());
    }

    [Fact]
    public void The_published_id_gives_the_published_fields()
    {
        var id = EntryId.Parse(Published);
        Assert.Equal(PublishedMilliseconds, id.Milliseconds);
        Assert.Equal(((UInt128)0xCC3 << 62) | 0x18C4DC0C0C07398F, id.Tail);
        // certified: same appendix, "Tuesday, February 22, 2022 2:22:22.00 PM GMT-05:00".
        Assert.Equal(DateTimeOffset.Parse("2022-02-22T14:22:22-05:00", CultureInfo.InvariantCulture), DateTimeOffset.FromUnixTimeMilliseconds(id.Milliseconds));
    }

    [Theory]
    [InlineData("")]
    [InlineData("017F22E2-79B0-7CC3-98C4-DC0C0C07398F")]
    [InlineData("017f22e2-79b0-4cc3-98c4-dc0c0c07398f")]
    [InlineData("017f22e2-79b0-7cc3-c8c4-dc0c0c07398f")]
    [InlineData("017f22e279b07cc398c4dc0c0c07398f")]
    [InlineData("017f22e2-79b0-7cc3-98c4-dc0c0c07398")]
    [InlineData("017f22e2-79b0-7cc3-98c4-dc0c0c07398g")]
    [InlineData("{017f22e2-79b0-7cc3-98c4-dc0c0c0739}")]
    [InlineData("017f22e2-79b0-7cc3-98c4--c0c0c07398f")]
    public void Other_texts_are_refused(string text)
    {
        Assert.False(EntryId.TryParse(text, out _));
        Assert.Contains("UUID of version 7", Assert.Throws<JobException>(() => EntryId.Parse(text)).Problem.Mend, StringComparison.Ordinal);
    }

    [Fact]
    public void Ids_compare_as_their_texts_do() =>
        Gen.Select(Gen.Long[0, (1L << 48) - 1], Gen.ULong, Gen.Long[0, (1L << 48) - 1], Gen.ULong).Sample((a, tailA, b, tailB) =>
        {
            var (one, other) = (EntryId.Of(a, tailA), EntryId.Of(b, tailB));
            Assert.Equal(Math.Sign(string.CompareOrdinal(one.ToString(), other.ToString())), Math.Sign(one.CompareTo(other)));
            Assert.Equal(one, EntryId.Parse(one.ToString()));
        });
}
