using CsCheck;

namespace Undercowl.Physics.Tests;

public sealed class PaschenLawTests
{
    [Fact]
    [Truth(
        From.Certified,
        "15, 365, 0.01 at 760 Torr x 1 mm: 5035.0 V, asserted in public code quoting Lieberman and Lichtenberg, 2nd ed., table 14.1")]
    public void One_atmosphere_across_a_millimetre() =>
        Expect.Within(
            Tolerances.PaschenPrinted, 5035.0,
            PaschenLaw.BreakdownVolts(PressureDistance.FromTorrCentimetres(76), TownsendCoefficients.Air));

    [Fact]
    [Truth(From.Certified, "305.27 V for 15, 365, 0.01, asserted in public code; position e ln(1 + 1/gamma)/A = 0.836 Torr cm by hand")]
    public void The_minimum_of_airs_formula()
    {
        Expect.Within(Tolerances.PaschenPrinted, 305.27, PaschenLaw.MinimumVolts(TownsendCoefficients.Air));
        Expect.Within(Tolerances.PrintedFourDigits, 0.836, PaschenLaw.MinimumAt(TownsendCoefficients.Air).TorrCentimetres);
    }

    [Fact]
    [Truth(From.Derived, "14.6, 365, 0.02: e (365/14.6) ln 51 = 267.2 V at 0.732 Torr cm")]
    public void The_minimum_of_air_on_iron()
    {
        Expect.Within(Tolerances.PrintedFourDigits, 267.2, PaschenLaw.MinimumVolts(TownsendCoefficients.AirOnIron));
        Expect.Within(Tolerances.PrintedFourDigits, 0.732, PaschenLaw.MinimumAt(TownsendCoefficients.AirOnIron).TorrCentimetres);
    }

    [Fact]
    [Truth(
        From.Certified,
        "measured minimum of air about 327 V near 0.567 Torr cm (highvoltageconnection.com paschen-curve; 7.5 um at 1 atm)")]
    public void The_formula_does_not_pretend_to_be_the_measured_minimum()
    {
        Expect.Outside(0.05, 327, PaschenLaw.MinimumVolts(TownsendCoefficients.Air));
        Expect.Outside(0.3, 0.567, PaschenLaw.MinimumAt(TownsendCoefficients.Air).TorrCentimetres);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(0.15)]
    [InlineData(0.3076)] // ln(101)/15 = 0.30767
    [Truth(From.Derived, "left of ln(1 + 1/gamma)/A = 0.30767 Torr cm the law has no solution")]
    public void Where_the_law_has_no_solution_it_refuses(double torrCentimetres) =>
        Expect.Refused(
            "pressure times distance",
            () => PaschenLaw.BreakdownVolts(PressureDistance.FromTorrCentimetres(torrCentimetres), TownsendCoefficients.Air));

    [Fact]
    [Truth(From.Certified, "112.5 and 2737.5 per kPa cm, vcalc.com Paschen's Law; the same gas as 15 and 365 per Torr cm")]
    public void Kilopascal_and_torr_coefficients_are_the_same_gas()
    {
        TownsendCoefficients byKilopascal = TownsendCoefficients.PerKilopascalCentimetre(112.5, 2737.5, 0.01);
        PressureDistance millimetre = PressureDistance.From(101.325, 1);
        Expect.Within(
            Tolerances.PaschenRoundedFactor,
            PaschenLaw.BreakdownVolts(millimetre, TownsendCoefficients.Air),
            PaschenLaw.BreakdownVolts(millimetre, byKilopascal));
    }

    [Fact]
    [Truth(From.Derived, "trap: 112.5 and 2737.5 labelled Torr, or 15 and 365 labelled kPa, are 7.5 times off")]
    public void Coefficients_given_in_the_other_unit_are_refused()
    {
        Expect.Refused("Townsend A", () => TownsendCoefficients.PerTorrCentimetre(112.5, 2737.5, 0.01).Gamma);
        Expect.Refused("Townsend A", () => TownsendCoefficients.PerKilopascalCentimetre(15, 365, 0.01).Gamma);
        Expect.Refused("Townsend B", () => TownsendCoefficients.PerTorrCentimetre(15, 2737.5, 0.01).Gamma);
        Expect.Refused("Townsend gamma", () => TownsendCoefficients.PerTorrCentimetre(15, 365, 0).Gamma);
    }

    [Fact]
    [Truth(From.Derived, "101.325 kPa x 1 mm = 10.1325 kPa cm = 76 Torr cm; factor 760/101.325 = 7.50062")]
    public void Pressure_distance_keeps_its_units_apart()
    {
        PressureDistance pd = PressureDistance.From(101.325, 1);
        Expect.Within(Tolerances.Rounding, 10.1325, pd.KilopascalCentimetres);
        Expect.Within(Tolerances.Rounding, 76, pd.TorrCentimetres);
        Expect.Within(Tolerances.PrintedSixDigits, 7.50062, PressureDistance.FromKilopascalCentimetres(1).TorrCentimetres);
        Assert.Equal(0, default(PressureDistance).TorrCentimetres);
    }

    [Fact]
    [Truth(From.Derived, "the minimum is a minimum: no pressure times distance with a solution gives less")]
    public void No_distance_breaks_down_below_the_minimum() =>
        Gen.Double[-0.99, 8].Sample(
            log =>
            {
                double pd = PaschenLaw.MinimumAt(TownsendCoefficients.Air).TorrCentimetres * Math.Exp(log);
                double volts = PaschenLaw.BreakdownVolts(PressureDistance.FromTorrCentimetres(pd), TownsendCoefficients.Air);
                Assert.True(volts >= PaschenLaw.MinimumVolts(TownsendCoefficients.Air) * (1 - Tolerances.Rounding));
            },
            seed: "0N0XIzNsQ0O2");

    [Fact]
    [Truth(
        From.Derived,
        "at breakdown gamma (exp(alpha d) - 1) = 1 with alpha = A p exp(-B p d/V): the criterion itself, not the solved formula")]
    public void The_solved_voltage_meets_townsends_criterion() =>
        Gen.Select(Gen.Double[0.35, 50], Gen.Double[0.005, 0.2]).Sample(
            (pd, gamma) =>
            {
                TownsendCoefficients gas = TownsendCoefficients.PerTorrCentimetre(15, 365, gamma);
                double volts = PaschenLaw.BreakdownVolts(PressureDistance.FromTorrCentimetres(pd), gas);
                double avalanche = 15 * pd * Math.Exp(-365 * pd / volts);
                Expect.Within(Tolerances.PaschenCriterion, 1, gamma * (Math.Exp(avalanche) - 1));
            },
            seed: "0N0XIzNsQ0O2");
}
