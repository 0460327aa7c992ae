namespace Undercowl.Physics.Tests;

public sealed class ShuntDampingTests
{
    [Theory]
    [InlineData(80, 70, 2, 0.267)]
    [InlineData(80, 70, 1, 0.535)]
    [InlineData(80, 70, 0.5, 1.069)]
    [InlineData(80, 70, 0.1, 5.345)]
    [InlineData(0.1, 50, 1, 0.0224)]
    [InlineData(0.1, 50, 0.1, 0.2236)]
    [Truth(From.Derived, "sqrt(L/C)/(2R): sqrt(80/70e-12)/2e6 = 0.5345")]
    public void Damping_by_hand(double henries, double picofarads, double megohms, double ratio) =>
        Expect.Within(Tolerances.PrintedThreeDigits, ratio, ShuntDamping.Ratio(henries, picofarads, megohms));

    [Fact]
    [Truth(From.Derived, "no shunt, no damping")]
    public void An_open_circuit_does_not_damp() => Assert.Equal(0, ShuntDamping.Ratio(80, 70, double.PositiveInfinity));

    [Fact]
    [Truth(From.Derived, "80 000 mH and 70e-12 F lie outside the range")]
    public void Millihenries_and_farads_are_refused()
    {
        Expect.Refused("secondary inductance", () => ShuntDamping.Ratio(80000, 70, 1));
        Expect.Refused("load capacitance", () => ShuntDamping.Ratio(80, 70e-12, 1));
    }
}
