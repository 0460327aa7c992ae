using CsCheck;

namespace Undercowl.Physics.Tests;

public sealed class PrimaryCurrentTests
{
    [Theory]
    [InlineData(13.5, 1.5, 4, 3, 6.078)]
    [InlineData(12, 3, 8, 5, 3.387)]
    [InlineData(12, 3, 8, 0, 0)]
    [Truth(From.Derived, "(V/R)(1 - exp(-R t/L)) by hand, Heywood 1988 eq. 9.53 as quoted in public code")]
    public void The_rise_by_hand(double volts, double ohms, double millihenries, double milliseconds, double amperes) =>
        Assert.Equal(amperes, PrimaryCurrent.Amperes(volts, ohms, millihenries, milliseconds), Tolerances.ThreeDecimals);

    [Fact]
    [Truth(From.Independent, "the circuit's equation L dI/dt = V - R I, by central difference")]
    public void The_current_obeys_the_circuits_equation() =>
        Gen.Select(Gen.Double[6, 16], Gen.Double[0.3, 5], Gen.Double[2, 10], Gen.Double[0.1, 10]).Sample(
            (volts, ohms, millihenries, milliseconds) =>
            {
                const double Step = 1e-4;
                double slope = (PrimaryCurrent.Amperes(volts, ohms, millihenries, milliseconds + Step)
                    - PrimaryCurrent.Amperes(volts, ohms, millihenries, milliseconds - Step)) / (2 * Step);
                double amperes = PrimaryCurrent.Amperes(volts, ohms, millihenries, milliseconds);
                Assert.Equal(volts - (ohms * amperes), millihenries * slope, Tolerances.CentralDifference);
            },
            seed: "0N0XIzNsQ0O2");

    [Fact]
    [Truth(From.Derived, "0.008 H given as mH; secondary ohms given for primary")]
    public void Henries_and_a_secondary_resistance_are_refused()
    {
        Expect.Refused("primary inductance", () => PrimaryCurrent.Amperes(12, 3, 0.008, 5));
        Expect.Refused("primary circuit resistance", () => PrimaryCurrent.Amperes(12, 3500, 8, 5));
    }
}
