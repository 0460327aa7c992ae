using CsCheck;

namespace Undercowl.Physics.Tests;

public sealed class CrankingPeakVoltageTests
{
    [Fact]
    [Truth(From.Derived, "induction: 120 V at 300 rpm is 160 V at 400 rpm")]
    public void A_winding_scales_with_speed() =>
        Expect.Within(
            Tolerances.Rounding, 160, CrankingPeakVoltage.PeakVoltsAt(PeakVoltageFamily.Winding, 400, 120, 300));

    [Theory]
    [InlineData(300, 400)]
    [InlineData(400, 400)]
    [Truth(From.Certified, "a published battery-fed unit gives 125 V cranking and 130 V at 1500 and 3500 rpm: it does not follow speed")]
    public void A_regulated_output_is_refused_even_at_its_own_speed(double measured, double wanted) =>
        Expect.Refused(
            "source of the peak voltage",
            () => CrankingPeakVoltage.PeakVoltsAt(PeakVoltageFamily.RegulatedOutput, wanted, 125, measured));

    [Fact]
    [Truth(From.Certified, "published trigger row of a 100 hp four-stroke: 2.7 V at 400 rpm, 7 V at 1500; proportion would say 10.1")]
    public void Distant_speeds_are_refused_because_published_rows_leave_the_proportion()
    {
        Expect.Refused(
            "speed of the specification", () => CrankingPeakVoltage.PeakVoltsAt(PeakVoltageFamily.Winding, 1500, 2.7, 400));
        Expect.Outside(0.4, 7, 2.7 * 1500 / 400);
    }

    [Fact]
    [Truth(From.Derived, "0 is no family")]
    public void A_family_that_was_never_stated_is_refused() =>
        Expect.Refused("source of the peak voltage", () => CrankingPeakVoltage.PeakVoltsAt(default, 400, 120, 300));

    [Fact]
    [Truth(From.Derived, "there and back is the reading")]
    public void Correcting_there_and_back_gives_the_reading() =>
        Gen.Select(Gen.Double[1, 400], Gen.Double[150, 800], Gen.Double[0.51, 1.99]).Sample(
            (volts, rpm, ratio) =>
            {
                double there = CrankingPeakVoltage.PeakVoltsAt(PeakVoltageFamily.Winding, rpm * ratio, volts, rpm);
                double back = CrankingPeakVoltage.PeakVoltsAt(PeakVoltageFamily.Winding, rpm, there, rpm * ratio);
                Expect.Within(Tolerances.RoundTrip, volts, back);
            },
            seed: "0N0XIzNsQ0O2");
}
