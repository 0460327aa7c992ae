using Undercowl.Diagnosis.Readings;
using Undercowl.Jobs;
using Undercowl.Knowledge;
using Undercowl.Physics;

namespace Undercowl.Diagnosis.Planning;

/// <summary>
/// What a check would say before it is done: for each level the chances of each outcome. Choices are outcomes themselves;
/// a number is counted as the level that it would speak for most, judged as it will be: by the engine's own figure, or by a generic range.
/// </summary>
/// <param name="Names">Outcomes.</param>
/// <param name="Rows">Level to the chance of each outcome; each row sums to 1.</param>
internal sealed record OutcomeTable(IReadOnlyList<string> Names, double[][] Rows)
{
    private const int Quantiles = 24;

    public static OutcomeTable Of(Check check, IReadOnlyList<string> levels, Circumstances at, IReadOnlyList<double?>? kilovolts, IReadOnlyDictionary<string, string> setUp)
    {
        if (check.Likelihood.Model == LikelihoodModel.Density)
        {
            return Numbers(check, levels, at);
        }

        string[] names = [.. check.Choices.Select(c => c.Id)];
        var rows = new double[levels.Count][];
        for (var level = 0; level < rows.Length; level++)
        {
            rows[level] = new double[names.Length];
        }

        for (var choice = 0; choice < names.Length; choice++)
        {
            var group = new ReadingGroup(check, levels, 0, [new TakenReading(new ChoiceReading(names[choice]), setUp, at)], kilovolts);
            if (ReadingLikelihood.Of(group) is not { } likelihood)
            {
                continue;
            }

            for (var level = 0; level < rows.Length; level++)
            {
                rows[level][choice] = likelihood[level];
            }
        }

        return new OutcomeTable(names, [.. rows.Select(Normalised)]);
    }

    private static OutcomeTable Numbers(Check check, IReadOnlyList<string> levels, Circumstances at)
    {
        var model = check.Likelihood;
        var generic = at.Reference is { Own: false } reference ? reference.Spread ?? model.GenericSpread ?? 0 : 0;
        var rows = new double[levels.Count][];
        var byOpen = Enumerable.Range(0, levels.Count).MaxBy(l => model.Densities[levels[l]].Open);
        for (var level = 0; level < rows.Length; level++)
        {
            var row = rows[level] = new double[levels.Count];
            var density = model.Densities[levels[level]];
            row[byOpen] += density.Open;
            for (var q = 0; q < Quantiles; q++)
            {
                var log = Math.Log(Math.Max(1e-3, density.Median)) + Spread(density) * Quantile(q);
                var speaks = Enumerable.Range(0, levels.Count).MaxBy(l => LogDensity(model.Densities[levels[l]], Spread(model.Densities[levels[l]]), log));
                row[speaks] += (1 - density.Open) * (1 - (model.Outlier ?? 0)) / Quantiles;
            }

            for (var l = 0; l < row.Length; l++)
            {
                row[l] += (1 - density.Open) * (model.Outlier ?? 0) / row.Length;
            }
        }

        if (at.Reference is not { Own: true } && check.Caps is [var cap, ..])
        {
            for (var outcome = 0; outcome < levels.Count; outcome++)
            {
                // "Over range" is counted as what it speaks for most, and is no matter of a range.
                if (outcome != byOpen || !check.Number!.Open)
                {
                    var column = DensityReadings.Capped([.. rows.Select(r => r[outcome])], cap.Decibans);
                    for (var level = 0; level < rows.Length; level++)
                    {
                        rows[level][outcome] = column[level];
                    }
                }
            }
        }

        return new OutcomeTable([.. levels.Select(l => $"as {l}")], [.. rows.Select(Normalised)]);

        double Spread(DensityRow row) => Math.Sqrt(row.Spread * row.Spread + generic * generic);
    }

    private static double LogDensity(DensityRow row, double spread, double log) =>
        StandardNormal.LogDensity((log - Math.Log(Math.Max(1e-3, row.Median))) / spread) - Math.Log(spread);

    /// <summary>The middle of the q-th of equally likely slices of the standard normal distribution, by bisection.</summary>
    private static double Quantile(int q)
    {
        var wanted = (q + 0.5) / Quantiles;
        var (low, high) = (-6.0, 6.0);
        for (var i = 0; i < 40; i++)
        {
            var middle = (low + high) / 2;
            (low, high) = StandardNormal.Cumulative(middle) < wanted ? (middle, high) : (low, middle);
        }

        return (low + high) / 2;
    }

    private static double[] Normalised(double[] row)
    {
        var sum = row.Sum();
        return sum > 0 ? Array.ConvertAll(row, x => x / sum) : Array.ConvertAll(row, _ => 1.0 / row.Length);
    }
}
