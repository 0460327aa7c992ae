using CsCheck;

namespace Undercowl.Physics.Tests;

public sealed class LogNormalTests
{
    [Fact]
    [Truth(From.Independent, "MathNet.Numerics 5.0.0 LogNormal with mu = ln median")]
    public void Agrees_with_another_library() =>
        Gen.Select(Gen.Double[0.01, 100], Gen.Double[0.1, 50], Gen.Double[0.05, 2]).Sample(
            (value, median, deviation) =>
            {
                MathNet.Numerics.Distributions.LogNormal other = new(Math.Log(median), deviation);
                Assert.Equal(
                    other.CumulativeDistribution(value), LogNormal.Cumulative(value, median, deviation),
                    Tolerances.OtherLibraryProbability);
                double theirs = other.DensityLn(value);
                Assert.Equal(
                    theirs, LogNormal.LogDensity(value, median, deviation), Tolerances.AbsoluteRounding * Math.Max(1, Math.Abs(theirs)));
            },
            seed: "0N0XIzNsQ0O2");

    [Fact]
    [Truth(From.Derived, "half lies below the median; one deviation above is a factor exp(s)")]
    public void Half_lies_below_the_median_and_a_deviation_is_a_factor()
    {
        Assert.Equal(0.5, LogNormal.Cumulative(12, 12, 0.2), Tolerances.Probability);
        Expect.Within(Tolerances.NormalTail, StandardNormal.Cumulative(1), LogNormal.Cumulative(12 * Math.Exp(0.2), 12, 0.2));
    }

    [Fact]
    [Truth(From.Derived, "the density is the slope of the cumulative, by central difference")]
    public void The_density_is_the_slope_of_the_cumulative() =>
        Gen.Select(Gen.Double[2, 40], Gen.Double[0.1, 1]).Sample(
            (value, deviation) =>
            {
                const double Step = 1e-4;
                double slope = (LogNormal.Cumulative(value + Step, 12, deviation)
                    - LogNormal.Cumulative(value - Step, 12, deviation)) / (2 * Step);
                Assert.Equal(slope, LogNormal.Density(value, 12, deviation), Tolerances.CentralDifference);
            },
            seed: "0N0XIzNsQ0O2");

    [Fact]
    [Truth(From.Derived, "nothing positive lies at or below zero; a percentage is not a fraction")]
    public void Nothing_lies_below_zero_and_bad_shapes_are_refused()
    {
        Assert.Equal(0, LogNormal.Cumulative(0, 12, 0.2));
        Assert.Equal(0, LogNormal.Density(-1, 12, 0.2));
        Expect.Refused("median", () => LogNormal.Cumulative(1, 0, 0.2));
        Expect.Refused("standard deviation of the logarithm", () => LogNormal.Cumulative(1, 12, 20));
        Expect.Refused("standard deviation of the logarithm", () => LogNormal.Cumulative(1, 12, 0));
    }
}
