namespace Undercowl.Physics.Tests;

public sealed class AllocationTests
{
    [Fact]
    [Truth(From.Independent, "the runtime's own count of bytes allocated on this thread")]
    public void Formulas_inside_their_range_allocate_nothing()
    {
        double sum = EveryFormulaOnce();
        long before = GC.GetAllocatedBytesForCurrentThread();
        sum += EveryFormulaOnce();
        long after = GC.GetAllocatedBytesForCurrentThread();
        Assert.Equal(0, after - before);
        Assert.True(double.IsFinite(sum));
    }

    private static double EveryFormulaOnce()
    {
        double air = AirDensityFactor.RelativeTo20Celsius(98, 12);
        double sum = AirDensityFactor.RelativeTo25Celsius(98, 12) + StandardAtmosphere.PressureKilopascals(1000);
        sum += TesterGap.BreakdownKilovolts(ElectrodeShape.Needle, 8, air);
        sum += TesterGap.GapMillimetres(ElectrodeShape.BluntPoints, 12, air);
        sum += TesterGap.BreakdownKilovolts(ElectrodeShape.Sphere, 8, air, 25);
        sum += TesterGap.GapMillimetres(ElectrodeShape.NearUniform, 12, air);
        sum += UniformFieldGapByBar.BreakdownPeakKilovolts(1, 1);
        sum += PaschenLaw.BreakdownVolts(PressureDistance.From(101, 1), TownsendCoefficients.Air);
        sum += PlugVoltageDemand.RequiredKilovolts(0.7, 10, 600);
        sum += AvailableVoltage.CapacitorDischargeKilovolts(1, 300, 0.5, 50);
        sum += AvailableVoltage.InductiveKilovolts(8, 4, 0.2, 100, 1, 50);
        sum += PrimaryCurrent.Amperes(12, 3, 8, 5) + ShuntedInductivePeak.Ratio(ShuntDamping.Ratio(80, 70, 1));
        sum += CrankingPeakVoltage.PeakVoltsAt(PeakVoltageFamily.Winding, 400, 120, 300);
        sum += CompressionAltitude.SeaLevelGaugeKilopascals(800, 95) + CompressionGaugePressure.GaugeKilopascals(7, 1.3);
        sum += ConductorResistance.OhmsAt20Celsius(ConductorMetal.Copper, 300, 35);
        sum += LeadAcidStateOfCharge.PercentFrom(12.4, 20);
        return sum + StandardNormal.LogCumulative(-3) + LogNormal.LogDensity(12, 11, 0.3);
    }
}
