namespace Undercowl.Physics;

/// <summary>
/// State of charge of a 12 V lead-acid battery from its voltage at rest (hours after charge or load, nothing connected),
/// straight lines between the rows of a table credited to the Battery Council International, 80 degF. Flooded cells; sealed and
/// gel types rest a little higher, lithium does not follow it at all.
/// </summary>
/// <remarks>
/// Corrected to 80 degF, 11.89 V is 0 % and 12.65 V is 100 %. Outside there is no answer: above is surface charge or another
/// type, below is a flat or damaged battery. Voltage 6 to 18 V, temperature -40 to 60 degC. Leaving each inner row out moves
/// its state of charge by less than 2 points, so quote no decimals.
/// </remarks>
public static class LeadAcidStateOfCharge
{
    /// <summary>80 degF.</summary>
    public const double ReferenceCelsius = 80.0 / 3;

    /// <summary>0.024 V per 10 degF, so V per degC. Battery maker's article, the same table's page.</summary>
    public const double VoltsPerCelsius = 0.024 / 10 * 9 / 5;

    internal static readonly double[] RestVolts = [11.89, 12.06, 12.24, 12.45, 12.65];

    internal static readonly double[] Percent = [0, 25, 50, 75, 100];

    /// <summary>
    /// The rest voltage as it would count at 80 degF: 0.024 V less for each 10 degF colder, 0.024 V more for each warmer.
    /// </summary>
    public static double VoltsAtReference(double restVolts, double batteryCelsius)
    {
        PhysicsRangeException.ThrowIfOutside(
            restVolts, 6, 18, "battery voltage", "V", "This is for one 12 V battery of six cells; a 24 V pair is two of them.");
        PhysicsRangeException.ThrowIfOutside(
            batteryCelsius, -40, 60, "battery temperature", "degC", "Give degrees Celsius: 80 degF is 26.7 degC.");
        return restVolts + (VoltsPerCelsius * (batteryCelsius - ReferenceCelsius));
    }

    /// <summary>Percent, 0 to 100; throws outside the table.</summary>
    public static double PercentFrom(double restVolts, double batteryCelsius)
    {
        double corrected = VoltsAtReference(restVolts, batteryCelsius);
        PhysicsRangeException.ThrowIfOutside(
            corrected, RestVolts[0], RestVolts[^1], "rest voltage corrected to 80 degF", "V",
            "Above: let the surface charge go and read again. Below: charge it, then test it under load.");
        return LinearTable.Interpolate(RestVolts, Percent, corrected);
    }

    /// <summary>As <see cref="PercentFrom"/>, but false (and NaN) when the corrected voltage is outside the table.</summary>
    public static bool TryPercentFrom(double restVolts, double batteryCelsius, out double percent)
    {
        double corrected = VoltsAtReference(restVolts, batteryCelsius);
        bool inside = corrected >= RestVolts[0] && corrected <= RestVolts[^1];
        percent = inside ? LinearTable.Interpolate(RestVolts, Percent, corrected) : double.NaN;
        return inside;
    }

    /// <summary>Rest voltage to expect at a state of charge (0 to 100 %) and temperature; the inverse.</summary>
    public static double RestVoltsAt(double percent, double batteryCelsius)
    {
        PhysicsRangeException.ThrowIfOutside(percent, 0, 100, "state of charge", "%", "Give percent: a half is 50.");
        PhysicsRangeException.ThrowIfOutside(
            batteryCelsius, -40, 60, "battery temperature", "degC", "Give degrees Celsius: 80 degF is 26.7 degC.");
        return LinearTable.Interpolate(Percent, RestVolts, percent) - (VoltsPerCelsius * (batteryCelsius - ReferenceCelsius));
    }
}
