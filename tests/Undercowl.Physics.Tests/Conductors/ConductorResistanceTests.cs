using CsCheck;

namespace Undercowl.Physics.Tests;

public sealed class ConductorResistanceTests
{
    [Theory]
    [InlineData(ConductorMetal.Copper, -10, 0.8821)]
    [InlineData(ConductorMetal.Copper, 0, 0.9214)]
    [InlineData(ConductorMetal.Copper, 20, 1)]
    [InlineData(ConductorMetal.Copper, 40, 1.0786)]
    [InlineData(ConductorMetal.Copper, 60, 1.1572)]
    [InlineData(ConductorMetal.Copper, 80, 1.2358)]
    [InlineData(ConductorMetal.Copper, 100, 1.3144)]
    [InlineData(ConductorMetal.Aluminium, 0, 0.9194)]
    [InlineData(ConductorMetal.Aluminium, 60, 1.1612)]
    [InlineData(ConductorMetal.Aluminium, 100, 1.3224)]
    [Truth(From.Derived, "1 + alpha (T - 20), alpha 0.00393 (IEC 60028) and 0.00403 (IEC 60889), as quoted in public code")]
    public void Ratios_by_hand(ConductorMetal metal, double celsius, double ratio)
    {
        Expect.Within(Tolerances.Rounding, ratio, ConductorResistance.OhmsAt(metal, 1, celsius));
        Expect.Within(Tolerances.Rounding, 1, ConductorResistance.OhmsAt20Celsius(metal, ratio, celsius));
    }

    [Theory]
    [InlineData(-20)]
    [InlineData(0)]
    [InlineData(80)]
    [InlineData(120)]
    [Truth(From.Independent, "inferred-zero form (234.5 + T)/(234.5 + 20) for copper; 234.5 from memory")]
    public void Copper_agrees_with_the_inferred_zero_form(double celsius) =>
        Expect.Within(
            Tolerances.PrintedFourDigits, (234.5 + celsius) / 254.5,
            ConductorResistance.RatioTo20Celsius(ConductorMetal.Copper, celsius));

    [Fact]
    [Truth(From.Certified, "alpha2 = alpha1/(1 + alpha1 (T2 - T1)), Modelica documentation of convertAlpha")]
    public void Going_from_one_temperature_to_another_through_20_degrees_uses_the_converted_coefficient()
    {
        double alphaAt60 = 0.00393 / (1 + (0.00393 * 40));
        double through20 = ConductorResistance.OhmsAt(
            ConductorMetal.Copper, ConductorResistance.OhmsAt20Celsius(ConductorMetal.Copper, 300, 60), 95);
        Expect.Within(Tolerances.RoundTrip, 300 * (1 + (alphaAt60 * (95 - 60))), through20);
    }

    [Fact]
    [Truth(From.Derived, "an inverse undoes its function")]
    public void There_and_back_is_the_reading() =>
        Gen.Select(Gen.Double[0.05, 20000], Gen.Double[-60, 200]).Sample(
            (ohms, celsius) => Expect.Within(
                Tolerances.RoundTrip, ohms,
                ConductorResistance.OhmsAt20Celsius(
                    ConductorMetal.Copper, ConductorResistance.OhmsAt(ConductorMetal.Copper, ohms, celsius), celsius)),
            seed: "0N0XIzNsQ0O2");

    [Fact]
    [Truth(From.Derived, "kelvin, boiling water in degF, an open circuit and no metal")]
    public void Kelvin_fahrenheit_an_open_circuit_and_an_unstated_metal_are_refused()
    {
        Expect.Refused("winding temperature", () => ConductorResistance.OhmsAt(ConductorMetal.Copper, 1, 293));
        Expect.Refused("winding temperature", () => ConductorResistance.OhmsAt(ConductorMetal.Copper, 1, 212));
        Expect.Refused("resistance", () => ConductorResistance.OhmsAt(ConductorMetal.Copper, double.PositiveInfinity, 20));
        Expect.Refused("metal of the winding", () => ConductorResistance.OhmsAt(default, 1, 20));
    }
}
