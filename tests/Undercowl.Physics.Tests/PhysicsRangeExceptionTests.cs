namespace Undercowl.Physics.Tests;

public sealed class PhysicsRangeExceptionTests
{
    [Fact]
    [Truth(From.Derived, "what the type's own documentation promises")]
    public void The_message_names_the_quantity_the_value_the_range_and_the_mend()
    {
        PhysicsRangeException error = Expect.Refused("plug gap", () => PlugVoltageDemand.RequiredKilovolts(28, 10, 600));

        Assert.Equal(28, error.Value);
        Assert.Equal(0.3, error.Minimum);
        Assert.Equal(2, error.Maximum);
        Assert.Equal("mm", error.Unit);
        Assert.Equal(
            "plug gap is 28 mm; it must be from 0.3 to 2 mm. Give millimetres: 0.028 in (28 thou) is 0.71 mm.", error.Message);
    }

    [Fact]
    [Truth(From.Derived, "pure numbers carry no unit")]
    public void A_pure_number_is_named_without_a_trailing_unit()
    {
        PhysicsRangeException error = Expect.Refused("compression ratio", () => CompressionGaugePressure.GaugeKilopascals(0.5, 1.3));
        Assert.StartsWith("compression ratio is 0.5; it must be from 1 to 25. ", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    [Truth(From.Derived, "a kind has no size")]
    public void What_is_refused_by_kind_carries_no_numbers()
    {
        PhysicsRangeException error = Expect.Refused(
            "sphere diameter", () => TesterGap.BreakdownKilovolts(ElectrodeShape.Sphere, 8, 1));
        Assert.True(double.IsNaN(error.Value) && double.IsNaN(error.Minimum) && double.IsNaN(error.Maximum));
        Assert.Contains("not given", error.Message, StringComparison.Ordinal);
    }

    public static TheoryData<string, Func<double, double>> EveryFormula() => new()
    {
        { "pressure, 25 degC", v => AirDensityFactor.RelativeTo25Celsius(v, 20) },
        { "temperature, 25 degC", v => AirDensityFactor.RelativeTo25Celsius(100, v) },
        { "pressure, 20 degC", v => AirDensityFactor.RelativeTo20Celsius(v, 20) },
        { "temperature, 20 degC", v => AirDensityFactor.RelativeTo20Celsius(100, v) },
        { "height, pressure", StandardAtmosphere.PressureKilopascals },
        { "height, temperature", StandardAtmosphere.TemperatureKelvin },
        { "height, density", StandardAtmosphere.KilogramsPerCubicMetre },
        { "height, geometric", StandardAtmosphere.GeopotentialMetres },
        { "needle gap", v => NeedleGap.BreakdownPeakKilovolts(v) },
        { "needle gap extended", v => NeedleGap.BreakdownPeakKilovolts(v, 1, OutsideTable.UseStatedExtension) },
        { "needle density", v => NeedleGap.BreakdownPeakKilovolts(8, v) },
        { "needle kV", v => NeedleGap.GapMillimetres(v) },
        { "needle kV, density", v => NeedleGap.GapMillimetres(12, v) },
        { "uniform gap", v => UniformFieldGap.BreakdownPeakKilovolts(v) },
        { "uniform density", v => UniformFieldGap.BreakdownPeakKilovolts(1, v) },
        { "uniform kV", v => UniformFieldGap.GapMillimetres(v) },
        { "bar gap", v => UniformFieldGapByBar.BreakdownPeakKilovolts(v, 1) },
        { "bar pressure", v => UniformFieldGapByBar.BreakdownPeakKilovolts(1, v) },
        { "bar kV", v => UniformFieldGapByBar.GapMillimetres(v, 1) },
        { "sphere gap", v => SphereGap.BreakdownPeakKilovolts(v, 25) },
        { "sphere diameter", v => SphereGap.BreakdownPeakKilovolts(5, v) },
        { "sphere density", v => SphereGap.BreakdownPeakKilovolts(5, 25, v) },
        { "sphere kV", v => SphereGap.GapMillimetres(v, 25) },
        { "torr cm", v => PressureDistance.FromTorrCentimetres(v).TorrCentimetres },
        { "kPa cm", v => PressureDistance.FromKilopascalCentimetres(v).TorrCentimetres },
        { "plug gap", v => PlugVoltageDemand.RequiredKilovolts(v, 10, 600) },
        { "plug pressure", v => PlugVoltageDemand.RequiredKilovolts(0.7, v, 600) },
        { "plug temperature", v => PlugVoltageDemand.RequiredKilovolts(0.7, 10, v) },
        { "tester needle", v => TesterGap.BreakdownKilovolts(ElectrodeShape.Needle, v, 1) },
        { "tester blunt", v => TesterGap.BreakdownKilovolts(ElectrodeShape.BluntPoints, v, 1) },
        { "tester flat", v => TesterGap.BreakdownKilovolts(ElectrodeShape.NearUniform, v, 1) },
        { "tester sphere", v => TesterGap.BreakdownKilovolts(ElectrodeShape.Sphere, v, 1, 25) },
        { "tester density", v => TesterGap.BreakdownKilovolts(ElectrodeShape.Needle, 8, v) },
        { "tester kV needle", v => TesterGap.GapMillimetres(ElectrodeShape.Needle, v, 1) },
        { "tester kV flat", v => TesterGap.GapMillimetres(ElectrodeShape.NearUniform, v, 1) },
        { "tester band", v => TesterGap.RelativeUncertainty(ElectrodeShape.Needle, v) },
        { "capacitor uF", v => CapacitorEnergy.Millijoules(v, 300) },
        { "capacitor V", v => CapacitorEnergy.Millijoules(1, v) },
        { "inductor mH", v => InductorEnergy.Millijoules(v, 3) },
        { "inductor A", v => InductorEnergy.Millijoules(6, v) },
        { "available share", v => AvailableVoltage.CapacitorDischargeKilovolts(1, 300, v, 50) },
        { "available pF", v => AvailableVoltage.CapacitorDischargeKilovolts(1, 300, 0.5, v) },
        { "available uF", v => AvailableVoltage.InductiveKilovolts(8, 4, v, 100, 1, 50) },
        { "available ratio", v => AvailableVoltage.InductiveKilovolts(8, 4, 0.2, v, 1, 50) },
        { "rise V", v => PrimaryCurrent.Amperes(v, 3, 8, 5) },
        { "rise ohm", v => PrimaryCurrent.Amperes(12, v, 8, 5) },
        { "rise mH", v => PrimaryCurrent.Amperes(12, 3, v, 5) },
        { "rise ms", v => PrimaryCurrent.Amperes(12, 3, 8, v) },
        { "kick us", v => InductiveKick.Kilovolts(6, 3, v) },
        { "damping L", v => ShuntDamping.Ratio(v, 50, 1) },
        { "damping C", v => ShuntDamping.Ratio(80, v, 1) },
        { "damping R", v => ShuntDamping.Ratio(80, 70, v) },
        { "inductive shunt", ShuntedInductivePeak.Ratio },
        { "capacitor shunt", ShuntedCapacitorDischargePeak.Ratio },
        { "peak V", v => CrankingPeakVoltage.PeakVoltsAt(PeakVoltageFamily.Winding, 400, v, 300) },
        { "peak rpm", v => CrankingPeakVoltage.PeakVoltsAt(PeakVoltageFamily.Winding, 400, 150, v) },
        { "wanted rpm", v => CrankingPeakVoltage.PeakVoltsAt(PeakVoltageFamily.Winding, v, 150, 300) },
        { "gauge", v => CompressionAltitude.SeaLevelGaugeKilopascals(v, 90) },
        { "ambient", v => CompressionAltitude.SeaLevelGaugeKilopascals(800, v) },
        { "ratio", v => CompressionGaugePressure.GaugeKilopascals(v, 1.3) },
        { "exponent", v => CompressionGaugePressure.GaugeKilopascals(7, v) },
        { "ratio inverse", v => CompressionGaugePressure.EffectiveRatio(v, 1.3) },
        { "ohms", v => ConductorResistance.OhmsAt20Celsius(ConductorMetal.Copper, v, 30) },
        { "winding degC", v => ConductorResistance.OhmsAt20Celsius(ConductorMetal.Copper, 300, v) },
        { "rest V", v => LeadAcidStateOfCharge.PercentFrom(v, 20) },
        { "battery degC", v => LeadAcidStateOfCharge.PercentFrom(12.4, v) },
        { "percent", v => LeadAcidStateOfCharge.RestVoltsAt(v, 20) },
        { "median", v => LogNormal.Cumulative(1, v, 0.2) },
        { "deviation", v => LogNormal.Cumulative(1, 1, v) },
    };

    [Theory]
    [MemberData(nameof(EveryFormula), DisableDiscoveryEnumeration = true)]
    [Truth(From.Derived, "NaN and negative input have no physical meaning in any of these places")]
    public void Every_input_of_every_formula_refuses_NaN_and_far_too_small_and_large_values(string input, Func<double, double> formula)
    {
        Assert.NotEmpty(input);
        Assert.Throws<PhysicsRangeException>(() => formula(double.NaN));
        Assert.Throws<PhysicsRangeException>(() => formula(-1e6));
        if (input is not ("damping R" or "median" or "inductive shunt" or "capacitor shunt"))
        {
            Assert.Throws<PhysicsRangeException>(() => formula(1e12));
        }
    }
}
