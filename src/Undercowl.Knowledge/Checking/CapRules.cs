namespace Undercowl.Knowledge.Checking;

/// <summary>What a reading may weigh at most: the numbers of the check's table keep to it.</summary>
internal static class CapRules
{
    /// <summary>Rounding of the rows' decimals.</summary>
    private const double Tolerance = 1e-9;

    public static void Check(Inspection inspection, Check check, string path)
    {
        for (var i = 0; i < check.Caps.Count; i++)
        {
            var (cap, at) = (check.Caps[i], path.Entry(i));
            inspection.Source(cap.Source, at);
            if (cap.Decibans <= 0)
            {
                inspection.Report(at.Member("decibans"), FormattableString.Invariant($"a reading that may weigh {cap.Decibans} decibans says nothing"), "write a number above 0");
            }

            foreach (var (reading, j) in cap.Readings.Select((r, j) => (r, j)))
            {
                inspection.OneOf("choice", reading, [.. check.Choices.Select(c => c.Id)], at.Member("readings").Entry(j));
            }

            if (check.Likelihood.Model == LikelihoodModel.Gap)
            {
                inspection.Report(at, "a gap that is jumped or not is no matter of looks", "take the cap out");
            }

            if (cap.Readings.Count == 1)
            {
                inspection.Report(at.Member("readings"), "of one choice there is nothing to tell apart", "name two or more, or none for all");
            }

            foreach (var (reading, weight, against) in Weights(check, cap).Where(w => w.Decibans > cap.Decibans + Tolerance))
            {
                inspection.Report(
                    at.Member("decibans"),
                    FormattableString.Invariant($"{reading} can weigh {weight:0.0} decibans, more than {cap.Decibans}"),
                    $"raise the chance of {reading} at {against}, or the cap with a source that bears it out");
            }
        }
    }

    /// <summary>For each choice that the cap holds for, the most that it can weigh, and against which level.</summary>
    public static IEnumerable<(string Reading, double Decibans, string Against)> Weights(Check check, ReadingCap cap)
    {
        if (check.Likelihood.Model != LikelihoodModel.Table)
        {
            yield break;
        }

        string[] among = cap.Readings.Count > 0 ? [.. cap.Readings] : [.. check.Choices.Select(c => c.Id)];
        foreach (var reading in among)
        {
            var shares = check.Likelihood.Given
                .Select(row => (Level: row.Key, Share: row.Value.GetValueOrDefault(reading) / among.Sum(r => row.Value.GetValueOrDefault(r))))
                .Where(s => s.Share > 0).OrderBy(s => s.Share).ToArray();
            if (shares.Length > 1)
            {
                yield return (reading, 10 * Math.Log10(shares[^1].Share / shares[0].Share), shares[0].Level);
            }
        }
    }
}
