using CsCheck;

namespace Undercowl.Physics.Tests;

public sealed class TesterGapTests
{
    private static readonly Gen<ElectrodeShape> AnyShape = Gen.Int[1, 4].Select(i => (ElectrodeShape)i);

    [Fact]
    [Truth(From.Derived, "air of 25 degC and 760 mmHg has density 1 by the needle table and 293/298 by the 20 degC reference")]
    public void Needles_in_the_tables_own_air_give_the_tables_value()
    {
        double airDensity = AirDensityFactor.RelativeTo20Celsius(101.325, 25);
        Expect.Within(Tolerances.PrintedFourDigits, 10, TesterGap.BreakdownKilovolts(ElectrodeShape.Needle, 8.5, airDensity));
    }

    [Theory]
    [InlineData(0.05)]
    [InlineData(6)]
    [Truth(From.Derived, "near-uniform is the 24.22/6.08 form, spheres are Peek's by the other reference")]
    public void Flat_faces_and_spheres_are_their_own_formulas(double extra)
    {
        double gap = 3 + extra;
        Expect.Within(
            Tolerances.Rounding, UniformFieldGap.BreakdownPeakKilovolts(gap, 0.9),
            TesterGap.BreakdownKilovolts(ElectrodeShape.NearUniform, gap, 0.9));
        Expect.Within(
            Tolerances.Rounding, SphereGap.BreakdownPeakKilovolts(gap, 25, 0.9 * 3.92 * 76 / 293),
            TesterGap.BreakdownKilovolts(ElectrodeShape.Sphere, gap, 0.9, 25));
    }

    [Fact]
    [Truth(From.Derived, "blunter electrodes of one gap need more: needle, blunt points, then flat faces")]
    public void Blunt_points_lie_between_needles_and_flat_faces()
    {
        for (double gap = 2; gap <= 20; gap += 0.25)
        {
            double needle = TesterGap.BreakdownKilovolts(ElectrodeShape.Needle, gap, 1);
            double blunt = TesterGap.BreakdownKilovolts(ElectrodeShape.BluntPoints, gap, 1);
            double flat = TesterGap.BreakdownKilovolts(ElectrodeShape.NearUniform, gap, 1);
            Assert.True(needle < blunt && blunt < flat);
        }
    }

    [Fact]
    [Truth(From.Derived, "the band says how much to believe: sphere, flat, needle, blunt, in that order; widest where no table reaches")]
    public void Uncertainty_widens_from_spheres_to_blunt_points_and_below_the_table()
    {
        double[] bands =
        [
            TesterGap.RelativeUncertainty(ElectrodeShape.Sphere, 8),
            TesterGap.RelativeUncertainty(ElectrodeShape.NearUniform, 8),
            TesterGap.RelativeUncertainty(ElectrodeShape.Needle, 8),
            TesterGap.RelativeUncertainty(ElectrodeShape.BluntPoints, 8),
            TesterGap.RelativeUncertainty(ElectrodeShape.BluntPoints, 3),
        ];
        Assert.Equal(bands.Order(), bands);
        Assert.True(TesterGap.RelativeUncertainty(ElectrodeShape.Needle, 3) > TesterGap.RelativeUncertainty(ElectrodeShape.Needle, 8));
    }

    [Fact]
    [Truth(From.Certified, "fast pulses need up to 5 against 3.8 kV, Michler et al. (KIT) as quoted in public code: ln 1.32 = 0.28")]
    public void The_excess_of_a_fast_pulse_is_within_two_and_a_half_deviations_of_every_band()
    {
        foreach (ElectrodeShape shape in Enum.GetValues<ElectrodeShape>())
        {
            Assert.True(2.5 * TesterGap.RelativeUncertainty(shape, 8) > Math.Log(5 / 3.8));
        }
    }

    [Theory]
    [InlineData(ElectrodeShape.Needle, 0.3)] // inches for 8 mm
    [InlineData(ElectrodeShape.BluntPoints, 0.4)]
    [InlineData(ElectrodeShape.Needle, 60)]
    [InlineData(ElectrodeShape.NearUniform, 25)]
    [Truth(From.Derived, "ranges stated in the type's documentation")]
    public void Gaps_a_tester_does_not_have_are_refused(ElectrodeShape shape, double gap) =>
        Expect.Refused("tester gap", () => TesterGap.BreakdownKilovolts(shape, gap, 1));

    [Fact]
    [Truth(From.Derived, "0 is no shape")]
    public void A_shape_that_was_never_stated_is_refused()
    {
        Expect.Refused("electrode shape", () => TesterGap.BreakdownKilovolts(default, 8, 1));
        Expect.Refused("electrode shape", () => TesterGap.GapMillimetres(default, 8, 1));
        Expect.Refused("electrode shape", () => TesterGap.RelativeUncertainty(default, 8));
        Expect.Refused("sphere diameter", () => TesterGap.GapMillimetres(ElectrodeShape.Sphere, 20, 1));
    }

    [Fact]
    [Truth(From.Derived, "an inverse undoes its function, whatever the shape")]
    public void Gap_to_kilovolts_and_back_is_the_gap() =>
        Gen.Select(AnyShape, Gen.Double[5.5, 20], Gen.Double[0.51, 1.4]).Sample(
            (shape, gap, density) =>
            {
                double kilovolts = TesterGap.BreakdownKilovolts(shape, gap, density, 25);
                Expect.Within(Tolerances.RoundTrip, gap, TesterGap.GapMillimetres(shape, kilovolts, density, 25));
            },
            seed: "0N0XIzNsQ0O2");

    [Theory]
    [InlineData(ElectrodeShape.Needle, 2.01, 51.9)]
    [InlineData(ElectrodeShape.BluntPoints, 2.01, 51.9)]
    [InlineData(ElectrodeShape.NearUniform, 0.301, 19.9)]
    [InlineData(ElectrodeShape.Sphere, 2.71, 24.9)]
    [Truth(From.Derived, "both directions have the same ends: the extreme gaps come back, beyond them nothing does")]
    public void The_ends_of_the_range_are_the_same_in_both_directions(ElectrodeShape shape, double shortest, double longest)
    {
        foreach (double gap in new[] { shortest, longest })
        {
            double kilovolts = TesterGap.BreakdownKilovolts(shape, gap, 1, 25);
            Expect.Within(Tolerances.RoundTrip, gap, TesterGap.GapMillimetres(shape, kilovolts, 1, 25));
        }

        double least = TesterGap.BreakdownKilovolts(shape, shortest, 1, 25);
        double most = TesterGap.BreakdownKilovolts(shape, longest, 1, 25);
        Assert.Throws<PhysicsRangeException>(() => TesterGap.GapMillimetres(shape, least * 0.97, 1, 25));
        Assert.Throws<PhysicsRangeException>(() => TesterGap.GapMillimetres(shape, most * 1.03, 1, 25));
    }

    [Fact]
    [Truth(From.Derived, "a wider gap or denser air never breaks down at less, across the seams of the ranges too")]
    public void Kilovolts_rise_with_gap_and_density() =>
        Gen.Select(
            AnyShape.Where(s => s != ElectrodeShape.Sphere),
            Gen.Double[2, 19], Gen.Double[0.001, 1], Gen.Double[0.5, 1.3], Gen.Double[0.001, 0.1]).Sample(
            (shape, gap, wider, density, denser) =>
            {
                double kilovolts = TesterGap.BreakdownKilovolts(shape, gap, density);
                Assert.True(TesterGap.BreakdownKilovolts(shape, gap + wider, density) > kilovolts);
                Assert.True(TesterGap.BreakdownKilovolts(shape, gap, density + denser) > kilovolts);
            },
            seed: "0N0XIzNsQ0O2");
}
