using CsCheck;

namespace Undercowl.Physics.Tests;

public sealed class LeadAcidStateOfChargeTests
{
    private const string Table =
        "rest voltage of a 12 V lead-acid battery at 80 degF, credited to Battery Council International; a battery maker's article "
        + "and a study copy, both read";

    [Theory]
    [InlineData(12.65, 100)]
    [InlineData(12.45, 75)]
    [InlineData(12.24, 50)]
    [InlineData(12.06, 25)]
    [InlineData(11.89, 0)]
    [Truth(From.Certified, Table)]
    public void Table_rows_are_met_in_both_directions(double volts, double percent)
    {
        double reference = LeadAcidStateOfCharge.ReferenceCelsius;
        Assert.Equal(percent, LeadAcidStateOfCharge.PercentFrom(volts, reference), Tolerances.AbsoluteRoundTrip);
        Assert.Equal(volts, LeadAcidStateOfCharge.RestVoltsAt(percent, reference), Tolerances.AbsoluteRounding);
    }

    [Fact]
    [Truth(From.Certified, Table + ", each inner row predicted from the others")]
    public void Leaving_out_any_inner_row_predicts_its_charge_within_two_points()
    {
        double[] volts = LeadAcidStateOfCharge.RestVolts;
        double[] percent = LeadAcidStateOfCharge.Percent;
        for (int row = 1; row < volts.Length - 1; row++)
        {
            double[] from = volts.Where((_, i) => i != row).ToArray();
            double[] to = percent.Where((_, i) => i != row).ToArray();
            Assert.Equal(percent[row], LinearTable.Interpolate(from, to, volts[row]), Tolerances.ChargeLeaveOneOutPoints);
        }
    }

    [Theory]
    [InlineData(80, 0)]
    [InlineData(40, -0.096)]
    [InlineData(0, -0.192)]
    [InlineData(100, 0.048)]
    [Truth(From.Certified, "0.024 V per 10 degF from 80 degF: -0.096 V at 40 degF, -0.192 V at 0 degF; the table's own article")]
    public void Temperature_moves_the_voltage_as_published(double fahrenheit, double volts) =>
        Assert.Equal(
            12.45 + volts,
            LeadAcidStateOfCharge.VoltsAtReference(12.45, Temperature.CelsiusFromFahrenheit(fahrenheit)),
            Tolerances.AbsoluteRounding);

    [Fact]
    [Truth(From.Derived, "12.45 V at 40 degF counts as 12.354 V: between 50 and 75 %, 50 + 25 x 0.114/0.21 = 63.6")]
    public void A_cold_battery_is_emptier_than_it_looks() =>
        Expect.Within(
            Tolerances.PrintedFourDigits, 63.571,
            LeadAcidStateOfCharge.PercentFrom(12.45, Temperature.CelsiusFromFahrenheit(40)));

    [Theory]
    [InlineData(12.9)] // just charged
    [InlineData(11.5)] // flat or damaged
    [Truth(From.Certified, Table + ", its ends")]
    public void Outside_the_table_there_is_no_answer(double volts)
    {
        Expect.Refused("rest voltage corrected to 80 degF", () => LeadAcidStateOfCharge.PercentFrom(volts, 26.7));
        Assert.False(LeadAcidStateOfCharge.TryPercentFrom(volts, 26.7, out double percent));
        Assert.True(double.IsNaN(percent));
    }

    [Theory]
    [InlineData(12.4, 80, "battery temperature")] // degF
    [InlineData(25.2, 20, "battery voltage")] // a 24 V pair
    [InlineData(2.1, 20, "battery voltage")] // one cell
    [Truth(From.Derived, "unit and system mix-ups fall outside the range")]
    public void Fahrenheit_and_other_batteries_are_refused(double volts, double celsius, string quantity) =>
        Expect.Refused(quantity, () => LeadAcidStateOfCharge.PercentFrom(volts, celsius));

    [Fact]
    [Truth(From.Derived, "an inverse undoes its function; more volts is more charge")]
    public void Charge_to_volts_and_back_is_the_charge_and_rises_with_volts() =>
        Gen.Select(Gen.Double[0.01, 98], Gen.Double[0.1, 1.9], Gen.Double[-40, 60]).Sample(
            (percent, more, celsius) =>
            {
                double volts = LeadAcidStateOfCharge.RestVoltsAt(percent, celsius);
                Assert.True(LeadAcidStateOfCharge.TryPercentFrom(volts, celsius, out double back));
                Assert.Equal(percent, back, Tolerances.AbsoluteRoundTrip);
                Assert.True(LeadAcidStateOfCharge.RestVoltsAt(percent + more, celsius) > volts);
            },
            seed: "0N0XIzNsQ0O2");
}
