using CsCheck;

namespace Undercowl.Physics.Tests;

/// <summary>Both shunt formulas against their circuits, integrated step by step.</summary>
public sealed class ShuntedPeakTests
{
    [Theory]
    [InlineData(0, 1.000)]
    [InlineData(0.267, 0.697)]
    [InlineData(0.535, 0.529)]
    [InlineData(1.069, 0.352)]
    [InlineData(2.673, 0.171)]
    [InlineData(5.345, 0.091)]
    [Truth(From.Derived, "exp(-z acos z/sqrt(1 - z^2)), acosh for z > 1, by an independent calculation")]
    public void Inductive_rows_by_hand(double damping, double ratio) =>
        Assert.Equal(ratio, ShuntedInductivePeak.Ratio(damping), Tolerances.ThreeDecimals);

    [Theory]
    [InlineData(0, 1.000)]
    [InlineData(0.0112, 0.983)]
    [InlineData(0.0224, 0.966)]
    [InlineData(0.0447, 0.934)]
    [InlineData(0.1118, 0.851)]
    [InlineData(0.2236, 0.743)]
    [Truth(From.Derived, "(1 + exp(-pi z/sqrt(1 - z^2)))/2, by an independent calculation")]
    public void Capacitor_discharge_rows_by_hand(double damping, double ratio) =>
        Assert.Equal(ratio, ShuntedCapacitorDischargePeak.Ratio(damping), Tolerances.ThreeDecimals);

    [Theory]
    [InlineData(0.05)]
    [InlineData(0.3)]
    [InlineData(0.9)]
    [InlineData(0.99995)]
    [InlineData(1)]
    [InlineData(1.00005)]
    [InlineData(1.3)]
    [InlineData(4)]
    [Truth(From.Independent, "v'' + 2 z v' + v = 0 from v = 0, v' = 1 (energy in L), Runge-Kutta; undamped peak 1")]
    public void The_inductive_ratio_is_the_integrated_peak(double damping) =>
        Expect.Within(Tolerances.Integration, IntegratedPeak(damping, drive: 0, slope: 1), ShuntedInductivePeak.Ratio(damping));

    [Theory]
    [InlineData(0.01)]
    [InlineData(0.1)]
    [InlineData(0.3)]
    [InlineData(0.7)]
    [Truth(From.Independent, "v'' + 2 z v' + v = 1 from rest (step through L), Runge-Kutta; undamped peak 2")]
    public void The_capacitor_discharge_ratio_is_the_integrated_peak(double damping) =>
        Expect.Within(
            Tolerances.Integration, IntegratedPeak(damping, drive: 1, slope: 0) / 2, ShuntedCapacitorDischargePeak.Ratio(damping));

    [Fact]
    [Truth(From.Derived, "z acos z/sqrt(1 - z^2) tends to 1 at z = 1, so the ratio is 1/e; the branches meet smoothly")]
    public void The_branches_meet_at_one_over_e()
    {
        Expect.Within(Tolerances.Rounding, Math.Exp(-1), ShuntedInductivePeak.Ratio(1));
        foreach (double seam in new[] { 1 - 1e-4, 1 + 1e-4 })
        {
            double below = ShuntedInductivePeak.Ratio(seam - 1e-12);
            double above = ShuntedInductivePeak.Ratio(seam + 1e-12);
            Assert.Equal(below, above, 3 * Tolerances.AbsoluteRounding);
        }
    }

    [Fact]
    [Truth(From.Derived, "acosh z -> ln 2z and the exponent -> -ln 2z, so the ratio -> 1/(2z)")]
    public void A_dead_short_leaves_nothing()
    {
        Expect.Within(Tolerances.Asymptote, 1 / 2e6, ShuntedInductivePeak.Ratio(1e6));
        Assert.InRange(ShuntedInductivePeak.Ratio(1e200), 0, 1e-199);
        Assert.Equal(0.5, ShuntedCapacitorDischargePeak.Ratio(1e200));
    }

    [Fact]
    [Truth(From.Derived, "more damping never leaves more; a capacitor discharge loses less to the same shunt at small z per unit L")]
    public void Ratios_fall_with_damping_and_stay_between_nothing_and_all() =>
        Gen.Select(Gen.Double[0, 10], Gen.Double[0.001, 1]).Sample(
            (damping, more) =>
            {
                double ratio = ShuntedInductivePeak.Ratio(damping);
                Assert.InRange(ratio, 0, 1);
                Assert.True(ShuntedInductivePeak.Ratio(damping + more) < ratio);
                Assert.True(ShuntedCapacitorDischargePeak.Ratio(damping + more) <= ShuntedCapacitorDischargePeak.Ratio(damping));
            },
            seed: "0N0XIzNsQ0O2");

    [Fact]
    [Truth(From.Derived, "0.1 H leakage against 80 H secondary with the same half megohm: 0.93 against 0.35")]
    public void The_same_deposit_costs_an_inductive_coil_far_more() =>
        Assert.True(
            ShuntedCapacitorDischargePeak.Ratio(ShuntDamping.Ratio(0.1, 50, 0.5))
            > 2.5 * ShuntedInductivePeak.Ratio(ShuntDamping.Ratio(80, 70, 0.5)));

    /// <summary>
    /// Largest v of v'' + 2 z v' + v = drive. The peak between two steps is taken from the parabola through the
    /// three highest points.
    /// </summary>
    private static double IntegratedPeak(double damping, double drive, double slope)
    {
        const int Steps = 20000;
        const double Step = 5.0 / Steps;
        double v = 0;
        double w = slope;
        double before = 0;
        double last = 0;
        for (int i = 0; i < Steps; i++)
        {
            (double v1, double w1) = (w, drive - (2 * damping * w) - v);
            (double v2, double w2) = Slope(Step / 2, v1, w1);
            (double v3, double w3) = Slope(Step / 2, v2, w2);
            (double v4, double w4) = Slope(Step, v3, w3);
            (before, last) = (last, v);
            v += Step / 6 * (v1 + (2 * v2) + (2 * v3) + v4);
            w += Step / 6 * (w1 + (2 * w2) + (2 * w3) + w4);
            if (v < last)
            {
                double turn = (before - v) / (before - (2 * last) + v) / 2;
                return last - ((before - v) * turn / 4);
            }
        }

        throw new InvalidOperationException("no peak within the integrated time");

        (double V, double W) Slope(double step, double dv, double dw)
        {
            double nextV = v + (step * dv);
            double nextW = w + (step * dw);
            return (nextW, drive - (2 * damping * nextW) - nextV);
        }
    }
}
