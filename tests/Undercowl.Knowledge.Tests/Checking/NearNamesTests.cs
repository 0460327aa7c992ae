using CsCheck;
using Undercowl.Knowledge.Checking;

namespace Undercowl.Knowledge.Tests.Checking;

public sealed class NearNamesTests
{
    // derived: counted by hand, one edit at a time.
    [Theory]
    [InlineData("", "", 0)]
    [InlineData("coil", "coil", 0)]
    [InlineData("coil", "coils", 1)]
    [InlineData("coil", "foil", 1)]
    [InlineData("coil", "colI", 2)]
    [InlineData("two", "tow", 1)]
    [InlineData("plug", "", 4)]
    [InlineData("kitten", "sitting", 3)]
    public void Edits_are_counted(string a, string b, int edits) => Assert.Equal(edits, NearNames.Distance(a, b));

    [Fact]
    public void Distance_is_symmetric_and_bounded_by_the_lengths() =>
        Gen.Select(Gen.String[Gen.Char["abc"], 0, 8], Gen.String[Gen.Char["abc"], 0, 8]).Sample(
            (a, b) =>
            {
                var d = NearNames.Distance(a, b);
                return d == NearNames.Distance(b, a) && d <= Math.Max(a.Length, b.Length) && d >= Math.Abs(a.Length - b.Length) && (d == 0) == (a == b);
            },
            seed: "0000KOIPe647");

    [Fact]
    public void The_nearest_is_proposed_else_the_list_is_shown_when_it_is_short()
    {
        Assert.Equal("did you mean plug?", NearNames.Mend("plugg", ["ring", "plug", "coil"]));
        Assert.Equal("use one of: coil, plug, ring", NearNames.Mend("carburettor", ["ring", "plug", "coil"]));
        Assert.Contains("none is like it", NearNames.Mend("carburettor", Enumerable.Range(0, 40).Select(i => $"n{i}")), StringComparison.Ordinal);
        Assert.Equal("take it out: there are none here", NearNames.Mend("plug", []));
    }
}
