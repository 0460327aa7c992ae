namespace Undercowl.Physics.Tests;

public sealed class InductiveKickTests
{
    [Fact]
    [Truth(
        From.Certified,
        "12 V, 4 ohm, 6 mH opened in 1 us: 18 kV; Alexander and Sadiku practice problem 7.22, worked solution at holooly.com")]
    public void A_coil_opened_in_a_microsecond()
    {
        double amperes = PrimaryCurrent.Amperes(12, 4, 6, 10000);
        Expect.Within(Tolerances.Rounding, 3, amperes);
        Expect.Within(Tolerances.Rounding, 18, InductiveKick.Kilovolts(6, amperes, 1));
    }
}
