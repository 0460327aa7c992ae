using CsCheck;

namespace Undercowl.Physics.Tests;

public sealed class CompressionGaugePressureTests
{
    [Theory]
    [InlineData(1.2, 769)]
    [InlineData(1.25, 850)]
    [InlineData(1.3, 939)]
    [InlineData(1.35, 1037)]
    [InlineData(1.4, 1144)]
    [Truth(From.Derived, "(6^n - 1) x 101.325 kPa")]
    public void Six_to_one_at_sea_level(double exponent, double kilopascals) =>
        Expect.Within(Tolerances.PrintedFourDigits, kilopascals, CompressionGaugePressure.GaugeKilopascals(6, exponent));

    [Fact]
    [Truth(
        From.Certified,
        "ratio 7.5, n 1.3 at 14.7 psi: 13.73 times ambient, 201.8 psi absolute, 187.1 psi gauge; encyclopaedia article, altsci.com mirror")]
    public void The_published_example_at_7_and_a_half_to_one()
    {
        double ambient = Pressure.KilopascalsFromPsi(14.7);
        double gauge = CompressionGaugePressure.GaugeKilopascals(7.5, 1.3, ambient);
        Expect.Within(Tolerances.PrintedFourDigits, 187.1, Pressure.PsiFromKilopascals(gauge));
        Expect.Within(Tolerances.PrintedFourDigits, 13.73, (gauge + ambient) / ambient);
    }

    [Fact]
    [Truth(From.Derived, "no compression reads zero: a gauge shows the excess over ambient")]
    public void A_ratio_of_one_reads_zero() => Assert.Equal(0, CompressionGaugePressure.GaugeKilopascals(1, 1.3));

    [Fact]
    [Truth(From.Derived, "an inverse undoes its function")]
    public void Ratio_to_gauge_and_back_is_the_ratio() =>
        Gen.Select(Gen.Double[1.01, 24.9], Gen.Double[1.05, 1.4], Gen.Double[60, 110]).Sample(
            (ratio, exponent, ambient) => Expect.Within(
                Tolerances.RoundTrip, ratio,
                CompressionGaugePressure.EffectiveRatio(
                    CompressionGaugePressure.GaugeKilopascals(ratio, exponent, ambient), exponent, ambient)),
            seed: "0N0XIzNsQ0O2");

    [Fact]
    [Truth(From.Derived, "1.67 is a monatomic gas, 130 a percentage")]
    public void Impossible_exponents_are_refused()
    {
        Expect.Refused("polytropic exponent", () => CompressionGaugePressure.GaugeKilopascals(7, 1.67));
        Expect.Refused("polytropic exponent", () => CompressionGaugePressure.GaugeKilopascals(7, 0.9));
    }
}
