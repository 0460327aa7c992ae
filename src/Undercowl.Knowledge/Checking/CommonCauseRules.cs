namespace Undercowl.Knowledge.Checking;

/// <summary>Common causes: what they bear on is there, and even where all of them befell an engine something is left for sound.</summary>
internal static class CommonCauseRules
{
    /// <summary>More on one aspect would tie too much together.</summary>
    private const int Most = 3;

    public static void Check(Inspection inspection)
    {
        inspection.Ids("common cause", inspection.CommonCauses.All.Select(c => c.Id), "/common-causes");
        for (var i = 0; i < inspection.CommonCauses.All.Count; i++)
        {
            var cause = inspection.CommonCauses.All[i];
            var path = inspection.CommonCauses.Path(i);
            inspection.Source(cause.Source, path);
            if (cause.Prior is not (> 0 and < 1))
            {
                inspection.Report(path.Member("prior"), FormattableString.Invariant($"prior is {cause.Prior}, which leaves no doubt"), "write a number between 0 and 1");
            }

            for (var j = 0; j < cause.Likelier.Count; j++)
            {
                Likelier(inspection, cause.Likelier[j], path.Member("likelier").Entry(j));
            }

            if (cause.Likelier.SelectMany(l => l.Conditions.Values, (l, c) => $"{l.Aspect}={c}").GroupBy(c => c).FirstOrDefault(g => g.Count() > 1) is { } twice)
            {
                inspection.Report(path.Member("likelier"), $"{twice.Key} is named twice", "say once how many times likelier it is");
            }
        }

        foreach (var (i, part) in inspection.Parts.All.Index())
        {
            foreach (var (j, aspect) in part.Aspects.Index())
            {
                Together(inspection, part, aspect, inspection.Parts.Path(i).Member("aspects").Entry(j));
            }
        }
    }

    private static void Likelier(Inspection inspection, Likelier row, string path)
    {
        inspection.Source(row.Source, path);
        if (row.Times is not (> 0 and < double.PositiveInfinity))
        {
            inspection.Report(path.Member("times"), FormattableString.Invariant($"times is {row.Times}"), "write how many times likelier, above 0");
        }

        if (LikelihoodRules.Conditions(inspection, row.Aspect, path.Member("aspect")) is not { } known)
        {
            return;
        }

        foreach (var condition in row.Conditions.Values)
        {
            inspection.OneOf($"condition of {row.Aspect},", condition, known.Skip(1), path.Member("conditions"));
        }
    }

    private static void Together(Inspection inspection, PartKind part, Aspect aspect, string path)
    {
        CommonCause[] causes = [.. inspection.CommonCauses.All.Where(c => c.Likelier.Any(l => l.Aspect == $"{part.Id}.{aspect.Id}"))];
        if (causes.Length > Most)
        {
            inspection.Report(path, $"{causes.Length} common causes bear on {part.Id}.{aspect.Id}: {string.Join(", ", causes.Select(c => c.Id))}", $"leave it to the {Most} that matter most");
        }

        // What adds up to 1 without them is told with the aspect itself.
        IEnumerable<IReadOnlyDictionary<string, double>> rows = aspect.Given is null ? [new Dictionary<string, double>()] : aspect.Given.Rows.Values;
        var most = causes.Length == 0 ? 0 : rows.Max(row => aspect.Conditions.Sum(c => AtMost(part, aspect, c, row.GetValueOrDefault(c.Id, c.Prior), causes)));
        if (most >= 1 && aspect.Conditions.Sum(c => c.Prior) < 1)
        {
            inspection.Report(path, FormattableString.Invariant($"where all common causes befell the engine the faults of {aspect.Id} add up to {most:0.###}"), "lower a prior or times: nothing is left for sound");
        }
    }

    private static double AtMost(PartKind part, Aspect aspect, Condition condition, double prior, CommonCause[] causes)
    {
        (double Prior, double Times)[] bearing = [.. causes.Select(c => (c.Prior, c.TimesOf($"{part.Id}.{aspect.Id}", condition.Id)))];
        return bearing.Aggregate(CommonCauseShare.Without(prior, bearing), (p, c) => p * Math.Max(1, c.Times));
    }
}
