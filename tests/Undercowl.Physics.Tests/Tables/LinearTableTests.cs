using CsCheck;

namespace Undercowl.Physics.Tests;

public sealed class LinearTableTests
{
    private static readonly double[] Values = [1, 2, 4, 8];
    private static readonly double[] Results = [10, 30, 20, 60];

    [Theory]
    [InlineData(1, 10)]
    [InlineData(2, 30)]
    [InlineData(8, 60)]
    [InlineData(1.5, 20)]
    [InlineData(3, 25)]
    [InlineData(5, 30)]
    [InlineData(0, -10)] // the first line continued
    [InlineData(10, 80)] // the last line continued
    [Truth(From.Derived, "straight lines by hand")]
    public void Rows_are_met_exactly_and_lines_run_between_them(double value, double expected) =>
        Assert.Equal(expected, LinearTable.Interpolate(Values, Results, value), Tolerances.AbsoluteRounding);

    [Fact]
    [Truth(From.Derived, "a line through collinear rows is that line, whatever rows there are")]
    public void Collinear_rows_give_their_line_everywhere() =>
        Gen.Double[-20, 20].Sample(
            x => Assert.Equal(
                (3 * x) + 1, LinearTable.Interpolate([-4, 0, 1, 7], [-11, 1, 4, 22], x), Tolerances.AbsoluteRoundTrip),
            seed: "0N0XIzNsQ0O2");
}
