using CsCheck;
using MathNet.Numerics;
using MathNet.Numerics.Distributions;

namespace Undercowl.Physics.Tests;

public sealed class StandardNormalTests
{
    [Theory]
    [InlineData(-37, 5.725571222524576823e-300, -689.0305855768905936)]
    [InlineData(-20, 2.753624118606233695e-89, -203.9171553710972639)]
    [InlineData(-10, 7.619853024160526066e-24, -53.23128515051247058)]
    [InlineData(-6, 9.865876450376981407e-10, -20.73676894997470565)]
    [InlineData(-5, 2.866515718791939117e-7, -15.06499839398872574)]
    [InlineData(-3, 0.001349898031630094527, -6.607726221510349543)]
    [InlineData(-2.5, 0.006209665325776135167, -5.081648277278690498)]
    [InlineData(-1, 0.1586552539314570514, -1.841021645009263506)]
    [InlineData(-0.6, 0.2742531177500735803, -1.293703811614028088)]
    [InlineData(-0.1, 0.4601721627229710185, -0.7761545927302733208)]
    [InlineData(0, 0.5, -0.6931471805599453094)]
    [InlineData(0.3, 0.6179114221889526373, -0.4814101615884811983)]
    [InlineData(1, 0.8413447460685429486, -0.1727537790234498895)]
    [InlineData(4, 0.9999683287581668801, -0.00003167174337748926386)]
    [InlineData(8, 0.9999999999999993779, -6.220960574271786059e-16)]
    [Truth(From.Independent, "mpmath 1.3.0, erfc(-z/sqrt 2)/2 at 40 digits")]
    public void Cumulative_and_its_logarithm_match_forty_digit_values(double z, double probability, double logarithm)
    {
        double tolerance = z < -5 ? Tolerances.NormalTail : Tolerances.NormalCentre;
        Expect.Within(tolerance, probability, StandardNormal.Cumulative(z));
        Expect.Within(Tolerances.NormalCentre, logarithm, StandardNormal.LogCumulative(z));
    }

    [Theory]
    [InlineData(-50, -1254.831361139419901)]
    [InlineData(-1000, -500007.8266948121843)]
    [Truth(From.Independent, "mpmath 1.3.0 at 40 digits, where the probability itself underflows")]
    public void The_logarithm_reaches_where_the_probability_underflows(double z, double logarithm)
    {
        Assert.Equal(0, StandardNormal.Cumulative(z));
        Expect.Within(Tolerances.NormalCentre, logarithm, StandardNormal.LogCumulative(z));
    }

    [Fact]
    [Truth(From.Independent, "MathNet.Numerics 5.0.0, Normal.CDF and Erfc")]
    public void A_sweep_agrees_with_another_library()
    {
        for (double z = -30; z <= 10; z += 0.01)
        {
            Expect.Within(2 * Tolerances.NormalTail, 0.5 * SpecialFunctions.Erfc(-z / Math.Sqrt(2)), StandardNormal.Cumulative(z));
            Assert.Equal(Normal.PDF(0, 1, z), StandardNormal.Density(z), Tolerances.Probability);
        }
    }

    [Fact]
    [Truth(From.Derived, "Marsaglia's series 1/2 + phi(z)(z + z^3/3 + z^5/15 + ...), J. Stat. Software 11(4), 2004")]
    public void The_middle_agrees_with_a_plain_series() =>
        Gen.Double[-2, 4].Sample(
            z =>
            {
                double term = z;
                double sum = z;
                for (int i = 3; Math.Abs(term) > 1e-18; i += 2)
                {
                    term *= z * z / i;
                    sum += term;
                }

                double series = 0.5 + (sum * Math.Exp(-z * z / 2) / Math.Sqrt(2 * Math.PI));
                Assert.Equal(series, StandardNormal.Cumulative(z), Tolerances.Probability);
            },
            seed: "0N0XIzNsQ0O2");

    [Fact]
    [Truth(From.Derived, "symmetry and the derivative: the two tails make one, and probability never falls")]
    public void Tails_make_one_and_the_curve_rises() =>
        Gen.Select(Gen.Double[-8, 8], Gen.Double[1e-6, 1]).Sample(
            (z, step) =>
            {
                Assert.Equal(1, StandardNormal.Cumulative(z) + StandardNormal.Cumulative(-z), Tolerances.Probability);
                Assert.True(StandardNormal.Cumulative(z + step) >= StandardNormal.Cumulative(z));
            },
            seed: "0N0XIzNsQ0O2");

    [Fact]
    [Truth(From.Independent, "mpmath 1.3.0: P(10 < Z < 10.5) = 7.576662960982433763e-24")]
    public void Between_keeps_its_digits_in_either_tail()
    {
        Expect.Within(Tolerances.NormalTail, 7.576662960982433763e-24, StandardNormal.Between(10, 10.5));
        Expect.Within(Tolerances.NormalTail, 7.576662960982433763e-24, StandardNormal.Between(-10.5, -10));
        Assert.Equal(0, StandardNormal.Between(1, 1));
        Assert.Equal(0, StandardNormal.Between(2, 1));
        Assert.Equal(1, StandardNormal.Between(double.NegativeInfinity, double.PositiveInfinity));
    }

    [Fact]
    [Truth(From.Derived, "limits of the distribution; NaN in, NaN out")]
    public void Infinities_and_NaN_behave()
    {
        Assert.Equal(0, StandardNormal.Cumulative(double.NegativeInfinity));
        Assert.Equal(1, StandardNormal.Cumulative(double.PositiveInfinity));
        Assert.Equal(double.NegativeInfinity, StandardNormal.LogCumulative(double.NegativeInfinity));
        Assert.Equal(0, StandardNormal.LogCumulative(double.PositiveInfinity));
        Assert.True(double.IsNaN(StandardNormal.Cumulative(double.NaN)));
        Assert.True(double.IsNaN(StandardNormal.LogCumulative(double.NaN)));
        Assert.True(double.IsNaN(StandardNormal.Between(double.NaN, 1)));
        Assert.True(double.IsNaN(StandardNormal.Density(double.NaN)));
    }
}
