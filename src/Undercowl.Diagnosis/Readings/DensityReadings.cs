using Undercowl.Jobs;
using Undercowl.Knowledge;
using Undercowl.Physics;

namespace Undercowl.Diagnosis.Readings;

/// <summary>
/// Numbers by a density. Lastingly, the check would show "over range" with the level's chance, else a value whose
/// logarithm, relative to the reference, is normal about the level's median; each measurement adds a fresh scatter. With a
/// small chance the value has nothing to do with the level. Values enter as they are: no bins.
/// </summary>
internal static class DensityReadings
{
    /// <summary>A ratio below this is taken as this: a dead short and 0 V have no logarithm.</summary>
    private const double Least = 1e-3;

    /// <summary>Half-width of a value that has nothing to do with the level, in the natural logarithm: estimate.</summary>
    private const double Anything = 1.2;

    private const double LeastOpen = 0.002;

    public static double[]? Likelihood(ReadingGroup group)
    {
        var model = group.Check.Likelihood;
        var logs = new List<double>();
        var open = 0;
        var (own, judgedByOwn) = (true, true);
        foreach (var reading in group.Readings)
        {
            switch (reading.Value)
            {
                case OpenReading:
                    open++;
                    break;
                case NumberReading number when Ratio(group.Check, number.Number, reading.Circumstances) is { } ratio:
                    logs.Add(Math.Log(Math.Max(Least, ratio)));
                    judgedByOwn &= reading.Circumstances.Reference is { Own: true };
                    own &= model.Reference == Absolute || judgedByOwn;
                    break;
                default:
                    break;
            }
        }

        if (logs.Count + open == 0)
        {
            return null;
        }

        var mean = logs.Count == 0 ? 0 : logs.Average();
        var generic = own ? 0 : group.Readings.Max(r => r.Circumstances.Reference?.Spread) ?? model.GenericSpread ?? 0;
        var wide = Wide(group, mean);
        var values = Array.ConvertAll([.. group.Levels], level => Value(model.Densities[level]));
        double? cap = !judgedByOwn && group.Check.Caps is [var stated, ..] ? stated.Decibans : null;
        if (open > 0 && cap is { } most)
        {
            // Over range is no matter of a range; the numbers beside it are.
            values = Capped(values, most);
        }

        var likelihood = new double[group.Levels.Count];
        for (var level = 0; level < likelihood.Length; level++)
        {
            var row = model.Densities[group.Levels[level]];
            var chance = Math.Clamp(row.Open, LeastOpen, 1 - LeastOpen);
            var lastingOpen = chance * Math.Pow(1 - model.Fresh, open) * Math.Pow(model.Fresh, logs.Count);
            var lastingValue = (1 - chance) * Math.Pow(model.Fresh, open) * Math.Pow(1 - model.Fresh, logs.Count);
            likelihood[level] = (1 - group.Doubt) * (lastingOpen + lastingValue) * values[level] + group.Doubt * wide;
        }

        return open > 0 || cap is not { } decibans ? likelihood : Capped(likelihood, decibans);

        double Value(DensityRow row)
        {
            var leads = Leads(group, mean, row.Median);
            var spread = Math.Sqrt(row.Spread * row.Spread + generic * generic + leads * leads + FreshSpread * FreshSpread / Math.Max(1, logs.Count));
            var z = (mean - Math.Log(Math.Max(Least, row.Median))) / spread;
            return logs.Count == 0 ? 1 : (1 - model.Outlier!.Value) * StandardNormal.Density(z) / spread + model.Outlier.Value * wide;
        }
    }

    /// <summary>No level is further behind the likeliest than so many decibans.</summary>
    public static double[] Capped(double[] likelihood, double decibans)
    {
        var least = likelihood.Max() * Math.Pow(10, -decibans / 10);
        return Array.ConvertAll(likelihood, l => Math.Max(l, least));
    }

    public const string Absolute = "absolute";

    /// <summary>Scatter of one measurement of the same thing, in the natural logarithm: 3 %, estimate.</summary>
    private const double FreshSpread = 0.03;

    /// <summary>The value over its reference, corrected; null when it cannot be compared.</summary>
    public static double? Ratio(Check check, Measured number, Circumstances at)
    {
        var unit = check.Number!.Unit;
        if (Units.Convert((double)number.Value.Value, number.Unit, unit) is not { } value)
        {
            return null;
        }

        value = Corrections.Apply(check.Likelihood.Correct, value, unit, at);
        if (check.Likelihood.Reference == Absolute)
        {
            return value;
        }

        return at.Reference is { } reference && Units.Convert(reference.Middle, reference.Unit, unit) is { } middle and > 0 ? value / middle : null;
    }

    /// <summary>
    /// What the meter's own leads add to the scatter of a resistance: their ohms over those read or those expected, whichever are fewer, so that
    /// what is no more than the leads themselves says little. They err alike each time.
    /// </summary>
    private static double Leads(ReadingGroup group, double mean, double median)
    {
        var unit = group.Check.Number!.Unit;
        var at = group.Readings[0].Circumstances;
        if (at.LeadOhms == 0 || Units.Convert(at.LeadOhms, "ohm", unit) is not { } ohms)
        {
            return 0;
        }

        var one = group.Check.Likelihood.Reference == Absolute ? 1 : Units.Convert(at.Reference?.Middle ?? 1, at.Reference?.Unit ?? unit, unit) ?? 1;
        return ohms / (one * Math.Max(Least, Math.Min(Math.Exp(mean), median)));
    }

    /// <summary>Cauchy's density: with its long tails a slip of the finger by decades proves nothing, where a normal one would.</summary>
    private static double Wide(ReadingGroup group, double mean)
    {
        var z = (mean - group.Check.Likelihood.Densities.Values.Average(r => Math.Log(Math.Max(Least, r.Median)))) / Anything;
        return 1 / (Math.PI * Anything * (1 + z * z));
    }
}
