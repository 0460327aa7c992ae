namespace Undercowl.Physics;

/// <summary>
/// Breakdown of air between two sharp points, by the handbook table based on results of the American Institute of
/// Electrical Engineers (peak kV, 760 mmHg, 25 degC), straight lines between its rows. Not for blunt or rounded
/// points, which need more, and not the AIEE needle-gap standard, whose kV are effective (rms): 1.41 times smaller.
/// </summary>
/// <remarks>
/// <para>Table: 4.2 to 52 mm, 5 to 50 kV. Kilovolts scale with air density, as the table's own factors do. Peek called
/// the needle gap unreliable (humidity, condition of the points): treat a result as good to 10 % or so.</para>
/// <para>Extension, only when asked for. Below 4.2 mm: the line through zero and the first row. It is an estimate on
/// the low side, since so close together even needles approach the uniform field, which needs three times as
/// much. Above 52 mm: the last line continued to 68.1 mm, where the handbook's own next row is 2.6 % lower.</para>
/// </remarks>
public static class NeedleGap
{
    /// <summary>First row, mm.</summary>
    public const double TableMinimumMillimetres = 4.2;

    /// <summary>Last row used, mm.</summary>
    public const double TableMaximumMillimetres = 52;

    /// <summary>End of the stated extension, mm.</summary>
    public const double ExtensionMaximumMillimetres = 68.1;

    // "Spark-gap voltages", six rows of the needle column; teslacoil.france.free.fr/nos_tesla/TC20_fichiers/sheet015.htm.
    internal static readonly double[] Millimetres = [4.2, 8.5, 17.5, 26.9, 38.1, 52.0];

    internal static readonly double[] PeakKilovoltsAt25Celsius = [5, 10, 20, 30, 40, 50];

    /// <summary>Peak kV that jumps the gap; the density factor is relative to 25 degC.</summary>
    public static double BreakdownPeakKilovolts(
        double gapMillimetres, double airDensityFactorAt25Celsius = 1, OutsideTable outside = OutsideTable.Refuse)
    {
        AirDensityFactor.ThrowIfOutside(airDensityFactorAt25Celsius);
        bool extend = outside == OutsideTable.UseStatedExtension;
        PhysicsRangeException.ThrowIfOutside(
            gapMillimetres,
            extend ? 0 : TableMinimumMillimetres,
            extend ? ExtensionMaximumMillimetres : TableMaximumMillimetres,
            "gap between needle points", "mm",
            "Give millimetres (1 cm is 10, 1/4 in is 6.35) and set the gap inside the table.");
        return airDensityFactorAt25Celsius * AtReferenceDensity(gapMillimetres);
    }

    /// <summary>Gap that the given peak kV just jumps; the inverse of <see cref="BreakdownPeakKilovolts"/>.</summary>
    public static double GapMillimetres(
        double peakKilovolts, double airDensityFactorAt25Celsius = 1, OutsideTable outside = OutsideTable.Refuse)
    {
        AirDensityFactor.ThrowIfOutside(airDensityFactorAt25Celsius);
        bool extend = outside == OutsideTable.UseStatedExtension;
        double lowest = extend ? 0 : PeakKilovoltsAt25Celsius[0];
        double highest = extend ? AtReferenceDensity(ExtensionMaximumMillimetres) : PeakKilovoltsAt25Celsius[^1];
        PhysicsRangeException.ThrowIfOutside(
            peakKilovolts, airDensityFactorAt25Celsius * lowest, airDensityFactorAt25Celsius * highest,
            "voltage across needle points", "kV peak",
            "Give peak kilovolts (an effective value times 1.414), inside the table.");
        double atReference = peakKilovolts / airDensityFactorAt25Celsius;
        return atReference < PeakKilovoltsAt25Celsius[0]
            ? atReference * TableMinimumMillimetres / PeakKilovoltsAt25Celsius[0]
            : LinearTable.Interpolate(PeakKilovoltsAt25Celsius, Millimetres, atReference);
    }

    private static double AtReferenceDensity(double gapMillimetres) =>
        gapMillimetres < TableMinimumMillimetres
            ? gapMillimetres * PeakKilovoltsAt25Celsius[0] / TableMinimumMillimetres
            : LinearTable.Interpolate(Millimetres, PeakKilovoltsAt25Celsius, gapMillimetres);
}
