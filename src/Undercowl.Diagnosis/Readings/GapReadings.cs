using System.Globalization;
using Undercowl.Knowledge;
using Undercowl.Physics;

namespace Undercowl.Diagnosis.Readings;

/// <summary>
/// A tester gap jumped or not: evidence about the available voltage through the breakdown law of that gap in today's air.
/// Lastingly, the logarithm of the available voltage over what the gap is taken to need scatters normally about the level's
/// own; the same draw serves all gaps tried in the group, so "5 mm yes, 11 mm no" brackets it. Within a narrow band about
/// the breakdown voltage the gap is jumped now and then. A lasting slip (the model's <c>outlier</c> and the hand's doubt)
/// shows any choice whatever the voltage, so endless repeats stay finite.
/// </summary>
internal static class GapReadings
{
    private const int Steps = 81;
    private const double Reach = 4;

    /// <summary>Half-width, in the logarithm of voltage, of the band in which a gap is jumped now and then: estimate.</summary>
    private const double Band = 0.06;

    public static double[]? Likelihood(ReadingGroup group)
    {
        var kilovolts = group.Kilovolts!;
        var model = group.Check.Likelihood;
        var names = model.GapChoices!;
        var tries = new List<(double LogKilovolts, string Choice)>();
        foreach (var reading in group.Readings)
        {
            if (ReadingLikelihood.Choice(group.Check, reading.Value) is { } choice && Judged(reading, model.Gap!) is { } needed)
            {
                tries.Add((Math.Log(needed), choice));
            }
        }

        if (tries.Count == 0)
        {
            return null;
        }

        var slip = 1 - (1 - group.Doubt) * (1 - (model.Outlier ?? 0));
        var any = Unrelated(tries, names, model.Fresh);
        var likelihood = new double[group.Levels.Count];
        for (var level = 0; level < likelihood.Length; level++)
        {
            var clear = 0.0;
            var weight = 0.0;
            var present = kilovolts[level] is > 0;
            for (var i = 0; i < (present ? Steps : 1); i++)
            {
                var z = -Reach + 2 * Reach * i / (Steps - 1);
                var density = StandardNormal.Density(z);
                var available = present ? Math.Log(kilovolts[level]!.Value) + z * model.Spread!.Value : double.NegativeInfinity;
                var product = density;
                foreach (var (needed, choice) in tries)
                {
                    var seen = available > needed + Band ? names.Always : available < needed - Band ? names.Never : names.Sometimes;
                    product *= (choice == seen ? 1 - model.Fresh : 0) + model.Fresh / 3;
                }

                clear += product;
                weight += density;
            }

            likelihood[level] = (1 - slip) * clear / weight + slip * any;
        }

        return likelihood;
    }

    /// <summary>The readings if what is shown lastingly has nothing to do with the voltage: any choice, equally likely.</summary>
    private static double Unrelated(List<(double LogKilovolts, string Choice)> tries, GapChoices names, double fresh)
    {
        var sum = 0.0;
        foreach (var shown in (ReadOnlySpan<string>)[names.Never, names.Sometimes, names.Always])
        {
            var product = 1.0 / 3;
            foreach (var (_, choice) in tries)
            {
                product *= (choice == shown ? 1 - fresh : 0) + fresh / 3;
            }

            sum += product;
        }

        return sum;
    }

    /// <summary>As <see cref="Breakdown"/>; null also where a setting of an old or foreign log is beyond the law, so that it says nothing.</summary>
    private static double? Judged(TakenReading reading, string setting)
    {
        try
        {
            return Breakdown(reading, setting);
        }
        catch (PhysicsRangeException)
        {
            return null;
        }
    }

    /// <summary>Kilovolts that the gap of the setting takes in today's air; null when the setting is no number. Raises the physics fault out of range.</summary>
    public static double? Breakdown(TakenReading reading, string setting)
    {
        if (!reading.SetUp.TryGetValue(setting, out var text))
        {
            return null;
        }

        var number = text.Split(' ')[0];
        return double.TryParse(number, NumberStyles.Float, CultureInfo.InvariantCulture, out var millimetres)
            ? TesterGap.BreakdownKilovolts(reading.Circumstances.Shape ?? ElectrodeShape.BluntPoints, millimetres, reading.Circumstances.AirDensity)
            : null;
    }
}
