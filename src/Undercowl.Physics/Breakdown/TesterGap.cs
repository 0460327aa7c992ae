namespace Undercowl.Physics;

/// <summary>
/// Voltage that jumps a tester's gap in open air, by the shape of its electrodes, and the gap a voltage jumps. What a
/// jump proves is that at least about this much was there; the band of <see cref="RelativeUncertainty"/> belongs to it.
/// </summary>
/// <remarks>
/// <para>The density factor is relative to 20 degC and 101.325 kPa for every shape
/// (<see cref="AirDensityFactor.RelativeTo20Celsius"/>); it is turned into the 25 degC reference where a formula
/// wants that.</para>
/// <para>Gaps: needle and blunt points 2 to 52 mm, spheres as <see cref="SphereGap"/>, near-uniform 0.3 to 20 mm. Values are
/// static breakdown; a fast ignition pulse can need up to a third more (5 against 3.8 kV at 0.9 mm, Michler et al. as
/// quoted in public code), which the bands cover.</para>
/// </remarks>
public static class TesterGap
{
    /// <summary>
    /// Estimate: blunt points need this many times what needles need. The only firm bounds are the needle below and
    /// the uniform field above; 1.2 keeps the usual tester near its common gradings.
    /// </summary>
    public const double BluntPerNeedle = 1.2;

    private const double ShortestPointMillimetres = 2;
    private const double ShortestFlatMillimetres = 0.3;
    private const double LongestFlatMillimetres = 20;

    /// <summary>
    /// Peak kV. The sphere diameter must be given for <see cref="ElectrodeShape.Sphere"/> and is not looked at otherwise.
    /// </summary>
    public static double BreakdownKilovolts(
        ElectrodeShape shape, double gapMillimetres, double airDensityFactor, double? sphereDiameterMillimetres = null)
    {
        ThrowIfDensityOutside(airDensityFactor);
        switch (shape)
        {
            case ElectrodeShape.Needle:
                return Points(gapMillimetres, airDensityFactor);
            case ElectrodeShape.BluntPoints:
                return BluntPerNeedle * Points(gapMillimetres, airDensityFactor);
            case ElectrodeShape.Sphere:
                return SphereGap.BreakdownPeakKilovolts(
                    gapMillimetres, Diameter(sphereDiameterMillimetres), At25Celsius(airDensityFactor));
            case ElectrodeShape.NearUniform:
                ThrowIfGapOutside(gapMillimetres, ShortestFlatMillimetres, LongestFlatMillimetres);
                return UniformFieldGap.BreakdownPeakKilovolts(gapMillimetres, airDensityFactor);
            default:
                throw UnknownShape(shape);
        }
    }

    /// <summary>Gap in mm that the given peak kV just jumps; the inverse of <see cref="BreakdownKilovolts"/>.</summary>
    public static double GapMillimetres(
        ElectrodeShape shape, double peakKilovolts, double airDensityFactor, double? sphereDiameterMillimetres = null)
    {
        ThrowIfDensityOutside(airDensityFactor);
        switch (shape)
        {
            case ElectrodeShape.Needle:
                return PointsGap(peakKilovolts, 1, airDensityFactor);
            case ElectrodeShape.BluntPoints:
                return PointsGap(peakKilovolts, BluntPerNeedle, airDensityFactor);
            case ElectrodeShape.Sphere:
                return SphereGap.GapMillimetres(
                    peakKilovolts, Diameter(sphereDiameterMillimetres), At25Celsius(airDensityFactor));
            case ElectrodeShape.NearUniform:
                ThrowIfKilovoltsOutside(
                    peakKilovolts,
                    UniformFieldGap.BreakdownPeakKilovolts(ShortestFlatMillimetres, airDensityFactor),
                    UniformFieldGap.BreakdownPeakKilovolts(LongestFlatMillimetres, airDensityFactor));
                return UniformFieldGap.GapMillimetres(peakKilovolts, airDensityFactor);
            default:
                throw UnknownShape(shape);
        }
    }

    /// <summary>
    /// One standard deviation of the natural logarithm of the breakdown voltage, so 0.2 is about 20 %. All are estimates:
    /// sphere 0.12 and near-uniform 0.15 (formulas differ by 3 to 7 %, irradiation lowers short gaps by up to 20 %, fast
    /// pulses raise them), needle 0.2 (humidity and the state of the points as well), blunt points 0.3 (their shape is
    /// unknown), and 0.35 for either kind of points below 4.2 mm, where no table reaches. Gap in mm, not negative.
    /// </summary>
    public static double RelativeUncertainty(ElectrodeShape shape, double gapMillimetres)
    {
        ThrowIfGapOutside(gapMillimetres, 0, 250);
        return shape switch
        {
            ElectrodeShape.Needle => gapMillimetres < NeedleGap.TableMinimumMillimetres ? 0.35 : 0.2,
            ElectrodeShape.BluntPoints => gapMillimetres < NeedleGap.TableMinimumMillimetres ? 0.35 : 0.3,
            ElectrodeShape.Sphere => 0.12,
            ElectrodeShape.NearUniform => 0.15,
            _ => throw UnknownShape(shape),
        };
    }

    private static double Points(double gapMillimetres, double airDensityFactor)
    {
        ThrowIfGapOutside(gapMillimetres, ShortestPointMillimetres, NeedleGap.TableMaximumMillimetres);
        return NeedleGap.BreakdownPeakKilovolts(
            gapMillimetres, At25Celsius(airDensityFactor), OutsideTable.UseStatedExtension);
    }

    private static double PointsGap(double peakKilovolts, double perNeedle, double airDensityFactor)
    {
        ThrowIfKilovoltsOutside(
            peakKilovolts,
            perNeedle * Points(ShortestPointMillimetres, airDensityFactor),
            perNeedle * Points(NeedleGap.TableMaximumMillimetres, airDensityFactor));
        return NeedleGap.GapMillimetres(
            peakKilovolts / perNeedle, At25Celsius(airDensityFactor), OutsideTable.UseStatedExtension);
    }

    private static double At25Celsius(double airDensityFactor) => airDensityFactor * AirDensityFactor.To25CelsiusFrom20Celsius;

    private static double Diameter(double? sphereDiameterMillimetres) =>
        sphereDiameterMillimetres ?? throw new PhysicsRangeException(
            "sphere diameter", "not given", "a number of millimetres", "State the diameter of the tester's balls.");

    private static void ThrowIfGapOutside(double gapMillimetres, double minimum, double maximum) =>
        PhysicsRangeException.ThrowIfOutside(
            gapMillimetres, minimum, maximum, "tester gap", "mm",
            "Give millimetres (1/4 in is 6.35) and set the tester inside this range.");

    // The upper end leaves room for the change of reference, so that the message is about the factor the caller gave.
    private static void ThrowIfDensityOutside(double airDensityFactor) =>
        PhysicsRangeException.ThrowIfOutside(
            airDensityFactor, AirDensityFactor.Minimum, AirDensityFactor.Maximum / AirDensityFactor.To25CelsiusFrom20Celsius,
            "air density factor", string.Empty,
            "Give the factor (1 in ordinary air), not a pressure; work it out from pressure and temperature first.");

    private static void ThrowIfKilovoltsOutside(double kilovolts, double minimum, double maximum) =>
        PhysicsRangeException.ThrowIfOutside(
            kilovolts, minimum, maximum, "voltage across the tester", "kV peak",
            "Give peak kilovolts that this tester's gap can show.");

    private static PhysicsRangeException UnknownShape(ElectrodeShape shape) =>
        new("electrode shape", shape.ToString(), "needle, blunt points, sphere or near-uniform",
            "State the shape of the tester's electrodes.");
}
