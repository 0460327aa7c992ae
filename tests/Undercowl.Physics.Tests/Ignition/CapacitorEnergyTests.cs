namespace Undercowl.Physics.Tests;

public sealed class CapacitorEnergyTests
{
    [Theory]
    [InlineData(1, 150, 11.25)]
    [InlineData(1, 300, 45)]
    [InlineData(1, 400, 80)]
    [InlineData(0.5, 300, 22.5)]
    [InlineData(2, 200, 40)]
    [InlineData(1e-5, 10000, 0.5)] // a plug's own 10 pF at 10 kV
    [InlineData(6e-5, 20000, 12)]
    [Truth(From.Derived, "C V^2/2 by hand; 80 mJ also in public code")]
    public void Half_the_capacitance_times_the_square_of_the_voltage(double microfarads, double volts, double millijoules) =>
        Expect.Within(Tolerances.Rounding, millijoules, CapacitorEnergy.Millijoules(microfarads, volts));

    [Fact]
    [Truth(From.Derived, "1 uF is 1e-6 F; 1000 nF given as uF")]
    public void Farads_and_nanofarads_are_refused()
    {
        Expect.Refused("capacitance", () => CapacitorEnergy.Millijoules(1e-6, 300));
        Expect.Refused("capacitance", () => CapacitorEnergy.Millijoules(1000, 300));
    }
}
