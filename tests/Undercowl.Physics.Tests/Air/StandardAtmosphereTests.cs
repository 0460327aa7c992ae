namespace Undercowl.Physics.Tests;

public sealed class StandardAtmosphereTests
{
    [Theory]
    [InlineData(0, 288.150, 101.3250, 1.2250)]
    [InlineData(500, 284.900, 95.4608, 1.1673)]
    [InlineData(1000, 281.650, 89.8746, 1.1116)]
    [InlineData(2000, 275.150, 79.4952, 1.0065)]
    [Truth(From.Derived, "T = 288.15 - 0.0065 H, p = 101325 (T/288.15)^5.25588; constants from scipp.ucsc.edu 1976 Standard Atmosphere")]
    public void Low_heights_follow_the_standards_formula(double metres, double kelvin, double kilopascals, double density)
    {
        Expect.Within(Tolerances.Rounding, kelvin, StandardAtmosphere.TemperatureKelvin(metres));
        Expect.Within(Tolerances.PrintedSixDigits, kilopascals, StandardAtmosphere.PressureKilopascals(metres));
        Expect.Within(Tolerances.PrintedFiveDigits, density, StandardAtmosphere.KilogramsPerCubicMetre(metres));
    }

    [Fact]
    [Truth(
        From.Certified,
        "US Standard Atmosphere 1976, 11 km geopotential: 22632.1 Pa, 0.363918 kg/m3, 216.65 K; av8n.com/physics/altimetry")]
    public void The_top_of_the_layer_is_the_published_tropopause()
    {
        Expect.Within(Tolerances.Rounding, 216.65, StandardAtmosphere.TemperatureKelvin(11000));
        Expect.Within(Tolerances.PrintedSixDigits, 22.6321, StandardAtmosphere.PressureKilopascals(11000));
        Expect.Within(Tolerances.PrintedSixDigits, 0.363918, StandardAtmosphere.KilogramsPerCubicMetre(11000));
    }

    [Fact]
    [Truth(
        From.Certified,
        "10 km geopotential 26436.2 Pa, quoted in public code; 5000 ft 12.230 psia, engineersedge.com standard_atmospheric_data_15729")]
    public void Ten_kilometres_and_five_thousand_feet_match_their_tables()
    {
        Expect.Within(Tolerances.PrintedSixDigits, 26.4362, StandardAtmosphere.PressureKilopascals(10000));
        Expect.Within(
            Tolerances.PrintedFourDigits, 12.230,
            Pressure.PsiFromKilopascals(StandardAtmosphere.PressureKilopascals(Length.MetresFromFeet(5000))));
    }

    [Theory]
    [InlineData(1000, 89.8763)]
    [InlineData(2000, 79.5014)]
    [InlineData(3000, 70.1211)]
    [Truth(From.Derived, "geometric rows of the US 1976 metre table, worked with the Earth radius 6356.766 km")]
    public void A_tape_measured_height_goes_through_geopotential_metres(double geometric, double kilopascals) =>
        Expect.Within(
            Tolerances.PrintedSixDigits, kilopascals,
            StandardAtmosphere.PressureKilopascals(StandardAtmosphere.GeopotentialMetres(geometric)));

    [Fact]
    [Truth(
        From.Derived,
        "trap: 1000/2000/3000 ft factors 0.9711, 0.9428, 0.9151 are density ratios; pressure gives 0.9644, 0.9298, 0.8962")]
    public void Pressure_and_density_ratios_are_not_the_same_factor()
    {
        (double, double, double)[] rows = [(1000, 0.9711, 0.9644), (2000, 0.9428, 0.9298), (3000, 0.9151, 0.8962)];
        foreach ((double feet, double density, double pressure) in rows)
        {
            double metres = Length.MetresFromFeet(feet);
            Expect.Within(Tolerances.PrintedFourDigits, density, StandardAtmosphere.KilogramsPerCubicMetre(metres) / 1.225);
            Expect.Within(Tolerances.PrintedFourDigits, pressure, StandardAtmosphere.PressureKilopascals(metres) / 101.325);
        }
    }

    [Fact]
    [Truth(From.Derived, "the standard's lowest layer ends at 11 km")]
    public void Heights_outside_the_lowest_layer_are_refused()
    {
        Expect.Refused("height above sea level", () => StandardAtmosphere.PressureKilopascals(11001));
        Expect.Refused("height above sea level", () => StandardAtmosphere.PressureKilopascals(-501));
    }
}
