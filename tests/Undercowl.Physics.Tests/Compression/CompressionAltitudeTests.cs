using CsCheck;

namespace Undercowl.Physics.Tests;

public sealed class CompressionAltitudeTests
{
    [Theory]
    [InlineData(1524, 99.8)]
    [InlineData(1000, 106.4)]
    [InlineData(2000, 94.1)]
    [InlineData(3000, 83.0)]
    [Truth(From.Derived, "120 psi gauge at sea level, (g0 + p0) r - p0 r with r of the standard atmosphere")]
    public void A_hundred_and_twenty_psi_carried_up(double metres, double psi)
    {
        double ambient = StandardAtmosphere.PressureKilopascals(metres);
        double gauge = CompressionAltitude.GaugeKilopascalsAt(ambient, Pressure.KilopascalsFromPsi(120), 101.325);
        Expect.Within(Tolerances.PrintedFourDigits, psi, Pressure.PsiFromKilopascals(gauge));
    }

    [Fact]
    [Truth(
        From.Certified,
        "a magazine letter: 120 psi at sea level reads about 100 psi at 5000 ft; its '1 % per 250 ft' (96 psi) contradicts itself")]
    public void The_published_reading_at_5000_feet_is_met_and_its_rule_of_thumb_is_not()
    {
        double ambient = StandardAtmosphere.PressureKilopascals(Length.MetresFromFeet(5000));
        double psi = Pressure.PsiFromKilopascals(
            CompressionAltitude.GaugeKilopascalsAt(ambient, Pressure.KilopascalsFromPsi(120), 101.325));
        Assert.InRange(psi, 99, 101);
        Expect.Outside(0.03, 96, psi);
    }

    [Fact]
    [Truth(From.Derived, "trap: printed factors are density ratios; at 2000 ft 0.9428 instead of 0.9298")]
    public void The_correction_is_by_pressure_and_not_by_density()
    {
        double ambient = StandardAtmosphere.PressureKilopascals(Length.MetresFromFeet(2000));
        double factor = CompressionAltitude.GaugeKilopascalsAt(ambient, 1000, 101.325) / 1000;
        Expect.Within(Tolerances.PrintedFourDigits, 0.9298, factor);
        Expect.Outside(0.01, 0.9428, factor);
    }

    [Fact]
    [Truth(From.Independent, "a cylinder of one ratio and exponent, read at two places by the compression formula")]
    public void One_cylinder_read_at_two_places_corrects_to_one_reading() =>
        Gen.Select(Gen.Double[4, 12], Gen.Double[1.15, 1.4], Gen.Double[65, 105]).Sample(
            (ratio, exponent, ambient) => Expect.Within(
                Tolerances.RoundTrip,
                CompressionGaugePressure.GaugeKilopascals(ratio, exponent),
                CompressionAltitude.SeaLevelGaugeKilopascals(
                    CompressionGaugePressure.GaugeKilopascals(ratio, exponent, ambient), ambient)),
            seed: "0N0XIzNsQ0O2");

    [Theory]
    [InlineData(14.7)]
    [InlineData(29.92)]
    [InlineData(1.013)]
    [InlineData(1013)]
    [InlineData(760)]
    [Truth(From.Derived, "psi, inHg, bar, mbar and mmHg lie outside the range in kPa")]
    public void Ambient_pressure_in_other_units_is_refused(double ambient) =>
        Expect.Refused("ambient pressure", () => CompressionAltitude.SeaLevelGaugeKilopascals(800, ambient));
}
