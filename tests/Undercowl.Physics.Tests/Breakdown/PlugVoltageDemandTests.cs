using CsCheck;

namespace Undercowl.Physics.Tests;

public sealed class PlugVoltageDemandTests
{
    [Theory]
    [InlineData(0.7, 10, 600, 10.347)]
    [InlineData(1.0, 10, 600, 11.967)]
    [InlineData(0.8, 8, 550, 10.048)]
    [InlineData(0.7, 20, 700, 14.666)]
    [Truth(From.Derived, "4.3 + 136 p/T + 324 p d/T by hand; Pashley, Stone and Roberts, SAE 2000-01-0245, as quoted twice")]
    public void Cylinder_conditions_by_hand(double gap, double bar, double kelvin, double kilovolts) =>
        Expect.Within(Tolerances.PrintedFourDigits, kilovolts, PlugVoltageDemand.RequiredKilovolts(gap, bar, kelvin));

    [Fact]
    [Truth(
        From.Certified,
        "1 bar, 300 K, 1 mm gives 5.833 kV in public code; the coefficients reproduce it, the function refuses open air")]
    public void Open_air_is_refused_although_the_coefficients_reproduce_the_published_sum()
    {
        Expect.Within(
            Tolerances.PrintedFourDigits, 5.833,
            PlugVoltageDemand.Constant + ((PlugVoltageDemand.DensityTerm + PlugVoltageDemand.GapTerm) / 300));
        Expect.Refused("cylinder pressure at the spark", () => PlugVoltageDemand.RequiredKilovolts(1, 1, 300));
    }

    [Fact]
    [Truth(From.Derived, "denser gas and a wider gap need more, hotter gas less")]
    public void Demand_rises_with_gap_and_pressure_and_falls_with_heat() =>
        Gen.Select(Gen.Double[0.3, 1.9], Gen.Double[3, 50], Gen.Double[300, 1100], Gen.Double[0.01, 0.1]).Sample(
            (gap, bar, kelvin, more) =>
            {
                double kilovolts = PlugVoltageDemand.RequiredKilovolts(gap, bar, kelvin);
                Assert.True(PlugVoltageDemand.RequiredKilovolts(gap + more, bar, kelvin) > kilovolts);
                Assert.True(PlugVoltageDemand.RequiredKilovolts(gap, bar + more, kelvin) > kilovolts);
                Assert.True(PlugVoltageDemand.RequiredKilovolts(gap, bar, kelvin + more) < kilovolts);
            },
            seed: "0N0XIzNsQ0O2");

    [Theory]
    [InlineData(0.028, 10, 600, "plug gap")] // inches
    [InlineData(28, 10, 600, "plug gap")] // thou
    [InlineData(0.7, 1000, 600, "cylinder pressure at the spark")] // kPa
    [InlineData(0.7, 145, 600, "cylinder pressure at the spark")] // psi
    [InlineData(0.7, 1.013, 600, "cylinder pressure at the spark")] // open air
    [InlineData(0.7, 10, 80, "gas temperature at the spark")] // degC
    [Truth(From.Derived, "unit mix-ups fall outside the range")]
    public void Other_units_are_refused(double gap, double bar, double kelvin, string quantity) =>
        Expect.Refused(quantity, () => PlugVoltageDemand.RequiredKilovolts(gap, bar, kelvin));
}
