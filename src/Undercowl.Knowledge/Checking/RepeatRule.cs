namespace Undercowl.Knowledge.Checking;

/// <summary>
/// Looking again must not make certain. With the lasting chance L(v | level) of a choice v, the fresh slip f and n choices,
/// one look has the likelihood (1 - f) L + f / n, and endlessly many equal looks come to weigh as L alone. What the many
/// weigh more than the one, between two levels, stays below <see cref="Most"/> decibels.
/// </summary>
internal static class RepeatRule
{
    public const double Most = 3;

    /// <summary>For each choice the pair of levels whose weight grows most: where it is likeliest against where it is least likely.</summary>
    public static IEnumerable<Gain> Gains(Check check)
    {
        var choices = check.Choices.Count;
        var fresh = check.Likelihood.Fresh;
        return
            from row in check.Likelihood.Given
            from entry in row.Value
            where entry.Value > 0 && fresh is >= 0 and <= 1
            group (Level: row.Key, Chance: entry.Value) by entry.Key into same
            let high = same.MaxBy(c => c.Chance)
            let low = same.MinBy(c => c.Chance)
            select new Gain(
                same.Key, high.Level, low.Level, Decibels(high.Chance, low.Chance, fresh, 1.0 / choices), FreshAtMost(high.Chance, low.Chance, 1.0 / choices));
    }

    /// <summary>How much more the many weigh than the one, for the level with the greater chance against the other.</summary>
    /// <param name="high">Lasting chance of the reading at the one level, above 0.</param>
    /// <param name="low">The same at the other, above 0.</param>
    /// <param name="fresh">Chance of a fresh slip.</param>
    /// <param name="slip">Chance that a slip shows this reading.</param>
    public static double Decibels(double high, double low, double fresh, double slip) =>
        10 * Math.Log10(high / low * Once(low, fresh, slip) / Once(high, fresh, slip));

    private static double Once(double chance, double fresh, double slip) => (1 - fresh) * chance + fresh * slip;

    /// <summary>The largest fresh slip that keeps the rule; the gain grows with it. By halving, rounded down to 1e-4.</summary>
    private static double FreshAtMost(double high, double low, double slip)
    {
        var (kept, broken) = (0.0, 1.0);
        for (var i = 0; i < 40; i++)
        {
            var middle = (kept + broken) / 2;
            (kept, broken) = Decibels(high, low, middle, slip) < Most ? (middle, broken) : (kept, middle);
        }

        return Math.Floor(kept * 1e4) / 1e4;
    }
}

/// <summary>The extra weight of endless repeats of a choice, for one level against another.</summary>
internal sealed record Gain(string Choice, string For, string Against, double Decibels, double FreshAtMost);
