using CsCheck;

namespace Undercowl.Physics.Tests;

public sealed class NeedleGapTests
{
    private const string Handbook =
        "Spark-gap voltages, needle points, based on results of the American Institute of Electrical Engineers, peak kV, 760 mmHg, "
        + "25 degC; teslacoil.france.free.fr/nos_tesla/TC20_fichiers/sheet015.htm";

    [Theory]
    [InlineData(5, 4.2)]
    [InlineData(10, 8.5)]
    [InlineData(20, 17.5)]
    [InlineData(30, 26.9)]
    [InlineData(40, 38.1)]
    [InlineData(50, 52.0)]
    [Truth(From.Certified, Handbook)]
    public void Table_rows_are_met_in_both_directions(double kilovolts, double millimetres)
    {
        Expect.Within(Tolerances.Rounding, kilovolts, NeedleGap.BreakdownPeakKilovolts(millimetres));
        Expect.Within(Tolerances.Rounding, millimetres, NeedleGap.GapMillimetres(kilovolts));
    }

    [Theory]
    [InlineData(15, 13.0)]
    [InlineData(22.78, 20.0)] // the page's own worked interpolation
    [InlineData(25, 22.0)]
    [InlineData(35, 32.0)]
    [InlineData(45, 44.9)]
    [Truth(From.Certified, Handbook + ", rows that are not shipped")]
    public void Rows_held_out_of_the_table_lie_on_its_lines(double kilovolts, double millimetres) =>
        Expect.Within(Tolerances.NeedleHeldOutRows, kilovolts, NeedleGap.BreakdownPeakKilovolts(millimetres));

    [Fact]
    [Truth(From.Certified, Handbook + ", each inner row predicted from the others")]
    public void Leaving_out_any_inner_row_predicts_it_within_three_percent()
    {
        double[] millimetres = NeedleGap.Millimetres;
        double[] kilovolts = NeedleGap.PeakKilovoltsAt25Celsius;
        for (int out_ = 1; out_ < millimetres.Length - 1; out_++)
        {
            double[] from = millimetres.Where((_, i) => i != out_).ToArray();
            double[] to = kilovolts.Where((_, i) => i != out_).ToArray();
            Expect.Within(Tolerances.NeedleLeaveOneOut, kilovolts[out_], LinearTable.Interpolate(from, to, millimetres[out_]));
        }
    }

    [Theory]
    [InlineData(10, 11.9)]
    [InlineData(15, 18.4)]
    [InlineData(20, 25.4)]
    [InlineData(25, 33.0)]
    [InlineData(30, 41.0)]
    [InlineData(35, 51.0)]
    [Truth(
        From.Memory,
        "AIEE Standards 1914-16 needle gap, new No. 00 needles, effective kV, 25 degC, 760 mmHg, 80 % humidity; to be confirmed")]
    public void The_AIEE_needle_standard_agrees_as_effective_values_and_not_as_peaks(double effectiveKilovolts, double millimetres)
    {
        double computed = NeedleGap.GapMillimetres(SineWave.PeakFromEffective(effectiveKilovolts));
        Expect.Within(Tolerances.NeedleSecondTable, millimetres, computed);
        Expect.Outside(0.25, millimetres, NeedleGap.GapMillimetres(effectiveKilovolts));
    }

    [Theory]
    [InlineData(6, 7.1)]
    [InlineData(8, 9.4)]
    [InlineData(11.1, 12.9)]
    [InlineData(12.7, 14.7)]
    [InlineData(20, 22.66)]
    [Truth(From.Derived, "straight lines by hand, e.g. 8 mm: 5 + 5 (8 - 4.2)/(8.5 - 4.2) = 9.42; 20 mm: 20 + 10 x 2.5/9.4 = 22.66")]
    public void Usual_tester_gaps_by_hand(double millimetres, double kilovolts) =>
        Expect.Within(Tolerances.PrintedThreeDigits, kilovolts, NeedleGap.BreakdownPeakKilovolts(millimetres));

    [Theory]
    [InlineData(4.19)]
    [InlineData(52.01)]
    [InlineData(0.85)] // cm given as mm
    [InlineData(0.315)] // inches given as mm
    [InlineData(315)] // thou given as mm
    [Truth(From.Certified, Handbook + ", first and last shipped row")]
    public void Outside_the_table_is_refused_unless_asked_for(double millimetres) =>
        Expect.Refused("gap between needle points", () => NeedleGap.BreakdownPeakKilovolts(millimetres));

    [Fact]
    [Truth(From.Derived, "10 kV is 10 000 V")]
    public void Volts_are_refused_where_kilovolts_are_meant() =>
        Expect.Refused("voltage across needle points", () => NeedleGap.GapMillimetres(10000));

    [Fact]
    [Truth(From.Certified, Handbook + ", 60 kV at 68.1 mm, not shipped")]
    public void The_extension_upwards_ends_at_the_next_row_and_stays_within_three_percent_of_it()
    {
        Expect.Within(
            Tolerances.NeedleExtension, 60, NeedleGap.BreakdownPeakKilovolts(68.1, 1, OutsideTable.UseStatedExtension));
        Expect.Refused(
            "gap between needle points", () => NeedleGap.BreakdownPeakKilovolts(68.2, 1, OutsideTable.UseStatedExtension));
    }

    [Fact]
    [Truth(From.Derived, "the line through zero and 5 kV at 4.2 mm: 2.1 mm is 2.5 kV; needles never need more than flat faces")]
    public void The_extension_downwards_is_proportional_and_below_the_uniform_field()
    {
        Expect.Within(Tolerances.Rounding, 2.5, NeedleGap.BreakdownPeakKilovolts(2.1, 1, OutsideTable.UseStatedExtension));
        Assert.Equal(0, NeedleGap.BreakdownPeakKilovolts(0, 1, OutsideTable.UseStatedExtension));
        for (double gap = 0.1; gap <= 52; gap += 0.1)
        {
            Assert.True(
                NeedleGap.BreakdownPeakKilovolts(gap, 1, OutsideTable.UseStatedExtension)
                < UniformFieldGap.BreakdownPeakKilovolts(gap));
        }
    }

    [Fact]
    [Truth(From.Derived, "an inverse undoes its function")]
    public void Gap_to_kilovolts_and_back_is_the_gap_anywhere_in_range() =>
        Gen.Select(Gen.Double[0.01, 68], Gen.Double[0.5, 1.5]).Sample(
            (gap, density) =>
            {
                double kilovolts = NeedleGap.BreakdownPeakKilovolts(gap, density, OutsideTable.UseStatedExtension);
                Expect.Within(
                    Tolerances.RoundTrip, gap, NeedleGap.GapMillimetres(kilovolts, density, OutsideTable.UseStatedExtension));
            },
            seed: "0N0XIzNsQ0O2");

    [Fact]
    [Truth(From.Derived, "a wider gap or denser air never breaks down at less")]
    public void Kilovolts_rise_with_gap_and_with_density() =>
        Gen.Select(Gen.Double[4.2, 51], Gen.Double[0.001, 1], Gen.Double[0.5, 1.4], Gen.Double[0.001, 0.1]).Sample(
            (gap, wider, density, denser) =>
            {
                double kilovolts = NeedleGap.BreakdownPeakKilovolts(gap, density);
                Assert.True(NeedleGap.BreakdownPeakKilovolts(gap + wider, density) > kilovolts);
                Assert.True(NeedleGap.BreakdownPeakKilovolts(gap, density + denser) > kilovolts);
            },
            seed: "0N0XIzNsQ0O2");
}
