using CsCheck;

namespace Undercowl.Physics.Tests;

public sealed class AvailableVoltageTests
{
    [Fact]
    [Truth(From.Derived, "sqrt(2 x 0.5 x 45 mJ / 50 pF) = 30 kV")]
    public void A_microfarad_at_300_volts_lifts_50_picofarads_to_30_kilovolts() =>
        Expect.Within(Tolerances.Rounding, 30, AvailableVoltage.CapacitorDischargeKilovolts(1, 300, 0.5, 50));

    [Theory]
    [InlineData(0.2, 42.76)]
    [InlineData(0, 50.60)]
    [Truth(From.Derived, "sqrt(2 x 64 mJ / (50 pF + 0.2 uF/100^2)) = sqrt(0.128/70e-12); without the condenser sqrt(0.128/50e-12)")]
    public void A_coil_with_and_without_its_condenser(double microfarads, double kilovolts) =>
        Expect.Within(
            Tolerances.PrintedFourDigits, kilovolts, AvailableVoltage.InductiveKilovolts(8, 4, microfarads, 100, 1, 50));

    [Fact]
    [Truth(From.Derived, "energy is conserved: C2 V^2/2 is the share that arrives")]
    public void The_load_holds_the_energy_that_arrived() =>
        Gen.Select(Gen.Double[0.3, 3], Gen.Double[100, 400], Gen.Double[0.1, 1], Gen.Double[20, 200]).Sample(
            (microfarads, volts, share, picofarads) =>
            {
                double kilovolts = AvailableVoltage.CapacitorDischargeKilovolts(microfarads, volts, share, picofarads);
                Expect.Within(
                    Tolerances.RoundTrip, share * CapacitorEnergy.Millijoules(microfarads, volts),
                    1e3 * (picofarads * 1e-12) * Math.Pow(kilovolts * 1e3, 2) / 2);
            },
            seed: "0N0XIzNsQ0O2");

    [Theory]
    [InlineData(50, 50, "share of the energy that arrives")] // percent
    [InlineData(0.5, 50e-12, "load capacitance")] // farads
    [Truth(From.Derived, "percent and farads lie outside the range")]
    public void Other_units_are_refused(double share, double load, string quantity) =>
        Expect.Refused(quantity, () => AvailableVoltage.CapacitorDischargeKilovolts(1, 300, share, load));
}
