namespace Undercowl.Physics.Tests;

public sealed class AirDensityFactorTests
{
    [Theory]
    [InlineData(76, 25, 0.9997)]
    [InlineData(75, 35, 0.9545)]
    [Truth(From.Derived, "Peek's 3.92 b/(273 + t); inputs of a textbook example (ch. 4, ex. 4.1, p. 144) quoted in public code")]
    public void Peeks_form_gives_the_textbook_examples(double centimetresMercury, double celsius, double expected) =>
        Expect.Within(
            Tolerances.PrintedFourDigits, expected,
            AirDensityFactor.RelativeTo25Celsius(Pressure.KilopascalsFromTorr(centimetresMercury * 10), celsius));

    [Theory]
    [InlineData(0, 720, 1.04)]
    [InlineData(0, 740, 1.06)]
    [InlineData(0, 760, 1.09)]
    [InlineData(0, 780, 1.12)]
    [InlineData(10, 720, 1.00)]
    [InlineData(10, 740, 1.02)]
    [InlineData(10, 760, 1.05)]
    [InlineData(10, 780, 1.08)]
    [InlineData(20, 720, 0.96)]
    [InlineData(20, 740, 0.99)]
    [InlineData(20, 760, 1.02)]
    [InlineData(20, 780, 1.04)]
    [Truth(From.Certified, "spark-gap handbook table based on AIEE results, its multiplying factors; teslacoil.france.free.fr sheet015")]
    public void The_25_degree_form_reproduces_the_handbooks_voltage_factors(double celsius, double torr, double expected) =>
        Expect.Within(
            Tolerances.DensityFactorTwoDecimals, expected,
            AirDensityFactor.RelativeTo25Celsius(Pressure.KilopascalsFromTorr(torr), celsius));

    [Fact]
    [Truth(From.Certified, "IEC 60060-1 reference air 20 degC, 101.3 kPa; (p/760)(293/(273 + t)), novakcorp.com esgcorr")]
    public void The_20_degree_form_is_one_in_its_reference_air() =>
        Expect.Within(Tolerances.Rounding, 1, AirDensityFactor.RelativeTo20Celsius(101.325, 20));

    [Fact]
    [Truth(From.Derived, "3.92 x 76 / 293 = 1.01679")]
    public void The_two_references_are_1_7_percent_apart_and_convert_into_each_other()
    {
        double at20 = AirDensityFactor.RelativeTo20Celsius(95, 12);
        double at25 = AirDensityFactor.RelativeTo25Celsius(95, 12);
        Expect.Within(Tolerances.PrintedFourDigits, 1.0168, at25 / at20);
        Expect.Within(Tolerances.Rounding, at25, at20 * AirDensityFactor.To25CelsiusFrom20Celsius);
    }

    [Theory]
    [InlineData(760, 20, "air pressure")] // mmHg
    [InlineData(76, 77, "air temperature")] // degF
    [InlineData(14.7, 20, "air pressure")] // psi
    [InlineData(1.013, 20, "air pressure")] // bar
    [InlineData(1013, 20, "air pressure")] // mbar
    [InlineData(101325, 20, "air pressure")] // Pa
    [InlineData(101.3, 293, "air temperature")] // kelvin
    [Truth(From.Derived, "unit mix-ups lie outside outdoor air")]
    public void Other_units_are_refused(double pressure, double temperature, string quantity)
    {
        Expect.Refused(quantity, () => AirDensityFactor.RelativeTo25Celsius(pressure, temperature));
        Expect.Refused(quantity, () => AirDensityFactor.RelativeTo20Celsius(pressure, temperature));
    }

    [Fact]
    [Truth(From.Derived, "the corners of the outdoor range")]
    public void Whatever_the_factor_gives_the_gap_formulas_take()
    {
        foreach ((double kilopascals, double celsius) in new[] { (60.0, 60.0), (110.0, -50.0), (60.0, -50.0), (110.0, 60.0) })
        {
            Assert.True(NeedleGap.BreakdownPeakKilovolts(10, AirDensityFactor.RelativeTo25Celsius(kilopascals, celsius)) > 0);
            Assert.True(TesterGap.BreakdownKilovolts(
                ElectrodeShape.Needle, 10, AirDensityFactor.RelativeTo20Celsius(kilopascals, celsius)) > 0);
        }
    }
}
