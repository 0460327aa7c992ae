using CsCheck;

namespace Undercowl.Physics.Tests;

public sealed class UnitTests
{
    private const string NavalTable = "naval conversion table, navalfacilities.tpub.com/1004_6; digits beyond it by the definition";

    [Fact]
    [Truth(From.Certified, NavalTable)]
    public void Inch_thou_and_foot()
    {
        Assert.Equal(25.4, Length.MillimetresFromInches(1));
        Expect.Within(Tolerances.Rounding, 1.016, Length.MillimetresFromThou(40));
        Expect.Within(Tolerances.Rounding, 0.7112, Length.MillimetresFromThou(28));
        Assert.Equal(1524, Length.MetresFromFeet(5000), Tolerances.AbsoluteRoundTrip);
    }

    [Fact]
    [Truth(From.Certified, NavalTable + ": 6894.757 Pa; 0.45359237 x 9.80665/0.0254^2 = 6894.757293168...")]
    public void Pound_per_square_inch()
    {
        Expect.Within(Tolerances.PrintedSevenDigits, 6.894757293, Pressure.KilopascalsFromPsi(1));
        Expect.Within(Tolerances.PrintedFourDigits, 14.696, Pressure.PsiFromKilopascals(101.325));
    }

    [Fact]
    [Truth(From.Derived, "definitions: 1 bar 100 kPa, 1 kgf/cm2 98.0665 kPa, 760 Torr 101.325 kPa")]
    public void Bar_kilogram_force_and_torr()
    {
        Assert.Equal(1000, Pressure.KilopascalsFromBar(10));
        Assert.Equal(98.0665, Pressure.KilopascalsFromKilogramsForcePerSquareCentimetre(1));
        Expect.Within(Tolerances.Rounding, 101.325, Pressure.KilopascalsFromTorr(760));

        // 1 kgf/cm2 as a gauge dial prints it: 14.22 psi.
        Expect.Within(Tolerances.PrintedFourDigits, 14.223, Pressure.PsiFromKilopascals(98.0665));
    }

    [Fact]
    [Truth(From.Certified, NavalTable + ": 1.35582 and 0.112985 N m; 0.45359237 x 9.80665 x 0.3048 = 1.3558179483314")]
    public void Pound_foot_pound_inch_and_kilogram_metre()
    {
        Expect.Within(Tolerances.Rounding, 1.3558179483314004, Torque.NewtonMetresFromPoundForceFeet(1));
        Expect.Within(Tolerances.PrintedSevenDigits, 0.112984829, Torque.NewtonMetresFromPoundForceInches(1));
        Assert.Equal(9.80665, Torque.NewtonMetresFromKilogramForceMetres(1));
        Expect.Within(Tolerances.Rounding, 12 * Torque.NewtonMetresFromPoundForceInches(1), Torque.NewtonMetresFromPoundForceFeet(1));
    }

    [Theory]
    [InlineData(18.0, 24.4)]
    [InlineData(21.6, 29.3)]
    [InlineData(7.2, 9.8)]
    [Truth(From.Certified, "a plug maker's installation chart in lbf ft, converted")]
    public void Chart_torques_convert(double poundForceFeet, double newtonMetres) =>
        Expect.Within(Tolerances.PrintedThreeDigits, newtonMetres, Torque.NewtonMetresFromPoundForceFeet(poundForceFeet));

    [Theory]
    [InlineData(32, 0)]
    [InlineData(212, 100)]
    [InlineData(-40, -40)]
    [InlineData(80, 26.666666666666668)]
    [Truth(From.Derived, "fixed points of the scales; (80 - 32) x 5/9 = 26.67")]
    public void Fahrenheit_and_celsius(double fahrenheit, double celsius)
    {
        Assert.Equal(celsius, Temperature.CelsiusFromFahrenheit(fahrenheit), Tolerances.AbsoluteRounding);
        Assert.Equal(fahrenheit, Temperature.FahrenheitFromCelsius(celsius), Tolerances.AbsoluteRounding);
    }

    [Fact]
    [Truth(From.Derived, "0 degC is 273.15 K")]
    public void Kelvin()
    {
        Assert.Equal(293.15, Temperature.KelvinFromCelsius(20), Tolerances.AbsoluteRounding);
        Assert.Equal(20, Temperature.CelsiusFromKelvin(293.15), Tolerances.AbsoluteRounding);
    }

    [Fact]
    [Truth(From.Derived, "the root of two; 10 kV effective is 14.14 kV peak")]
    public void Peak_and_effective_value_of_a_sine_wave() =>
        Expect.Within(Tolerances.PrintedFourDigits, 14.142, SineWave.PeakFromEffective(10));

    public static TheoryData<string, Func<double, double>> ThereAndBack() => new()
    {
        { "inch", v => Length.InchesFromMillimetres(Length.MillimetresFromInches(v)) },
        { "thou", v => Length.ThouFromMillimetres(Length.MillimetresFromThou(v)) },
        { "foot", v => Length.FeetFromMetres(Length.MetresFromFeet(v)) },
        { "psi", v => Pressure.PsiFromKilopascals(Pressure.KilopascalsFromPsi(v)) },
        { "bar", v => Pressure.BarFromKilopascals(Pressure.KilopascalsFromBar(v)) },
        { "torr", v => Pressure.TorrFromKilopascals(Pressure.KilopascalsFromTorr(v)) },
        {
            "kgf/cm2",
            v => Pressure.KilogramsForcePerSquareCentimetreFromKilopascals(Pressure.KilopascalsFromKilogramsForcePerSquareCentimetre(v))
        },
        { "lbf ft", v => Torque.PoundForceFeetFromNewtonMetres(Torque.NewtonMetresFromPoundForceFeet(v)) },
        { "lbf in", v => Torque.PoundForceInchesFromNewtonMetres(Torque.NewtonMetresFromPoundForceInches(v)) },
        { "kgf m", v => Torque.KilogramForceMetresFromNewtonMetres(Torque.NewtonMetresFromKilogramForceMetres(v)) },
        { "degF", v => Temperature.FahrenheitFromCelsius(Temperature.CelsiusFromFahrenheit(v)) },
        { "effective", v => SineWave.EffectiveFromPeak(SineWave.PeakFromEffective(v)) },
    };

    [Theory]
    [MemberData(nameof(ThereAndBack), DisableDiscoveryEnumeration = true)]
    [Truth(From.Derived, "an inverse undoes its function")]
    public void There_and_back_is_the_same_number(string unit, Func<double, double> thereAndBack)
    {
        Assert.NotEmpty(unit);
        Gen.Double[-1000, 1000].Sample(v => Assert.Equal(v, thereAndBack(v), Tolerances.AbsoluteRoundTrip), seed: "0N0XIzNsQ0O2");
        Assert.True(double.IsNaN(thereAndBack(double.NaN)));
    }
}
