namespace Undercowl.Physics.Tests;

public sealed class InductorEnergyTests
{
    [Theory]
    [InlineData(6, 3, 27)]
    [InlineData(8, 4, 64)]
    [Truth(
        From.Certified,
        "6 mH at 3 A is 27 mJ: Alexander and Sadiku practice problem 7.22, worked solution at holooly.com; second row L I^2/2 by hand")]
    public void Half_the_inductance_times_the_square_of_the_current(double millihenries, double amperes, double millijoules) =>
        Expect.Within(Tolerances.Rounding, millijoules, InductorEnergy.Millijoules(millihenries, amperes));

    [Fact]
    [Truth(From.Derived, "6 mH is 0.006 H")]
    public void Henries_are_refused() => Expect.Refused("primary inductance", () => InductorEnergy.Millijoules(0.006, 3));
}
