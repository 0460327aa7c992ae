namespace Undercowl.Knowledge.Checking;

/// <summary>Readings of a number by its density.</summary>
internal static class DensityRules
{
    private const string Absolute = "absolute";

    /// <summary>An open chance below this is taken as this where readings are judged.</summary>
    private const double LeastOpen = 0.002;

    public static void Check(Inspection inspection, Check check, IReadOnlyList<string>? levels, string path)
    {
        var model = check.Likelihood;
        if (check.Number is null)
        {
            inspection.Report(path.Member("model"), "a density reads a number, not choices", "write model: table, or number instead of choices");
        }

        if (levels is not null)
        {
            LikelihoodRules.Cover(inspection, model.Densities.Keys, levels, path.Member("densities"));
        }

        foreach (var (level, row) in model.Densities)
        {
            var at = path.Member("densities").Member(level);
            inspection.Chance(row.Open, at.Member("open"));
            inspection.AtLeast(0, row.Median, at.Member("median"));
            if (row.Spread <= 0)
            {
                inspection.Report(at.Member("spread"), FormattableString.Invariant($"spread is {row.Spread}"), "write a number above 0");
            }

            if (row.Open > 0 && check.Number is { Open: false })
            {
                inspection.Report(at.Member("open"), "the number cannot be over range here", "write open: true under number, or take this out");
            }
        }

        if (model.Outlier is null or 0 or 1)
        {
            inspection.Report(path, "the chance of a reading that has nothing to do with the case is missing, 0 or 1", "add outlier: and a small chance above 0");
        }

        Repeats(inspection, check, path.Member("densities"));
        Reference(inspection, check, path);
    }

    /// <summary>"Over range" again and again: the rule of <see cref="RepeatRule"/> for the two readings open and a number.</summary>
    private static void Repeats(Inspection inspection, Check check, string path)
    {
        var rows = check.Likelihood.Densities;
        if (check.Number is not { Open: true } || rows.Count < 2)
        {
            return;
        }

        var (high, low) = (rows.MaxBy(r => r.Value.Open), rows.MinBy(r => r.Value.Open));
        var (likely, unlikely) = (Math.Max(LeastOpen, high.Value.Open), Math.Max(LeastOpen, low.Value.Open));
        var gain = 10 * Math.Log10(likely / unlikely * Once(unlikely, check.Likelihood.Fresh) / Once(likely, check.Likelihood.Fresh));
        if (gain >= RepeatRule.Most)
        {
            inspection.Note(
                path.Member(low.Key),
                FormattableString.Invariant($"over range seen again and again would weigh {gain:0.0} dB more for {high.Key} against {low.Key} than seen once"),
                $"raise open at {low.Key}, or lower fresh");
        }
    }

    private static double Once(double open, double fresh) => (1 - fresh) * open + fresh * (1 - open);

    private static void Reference(Inspection inspection, Check check, string path)
    {
        if (check.Likelihood.Reference is not (not null and not Absolute and var item)
            || inspection.Find(inspection.Specs, item, path.Member("reference")) is null)
        {
            return;
        }

        if (check.Likelihood.GenericSpread is null)
        {
            inspection.Report(path, "compared with a generic range, a value is less sure, but generic-spread is missing", "add generic-spread:, 0 if the range is as good as the engine's own");
        }

        foreach (var layout in inspection.Layouts.All.Where(l => check.Only.Holds(l) && !inspection.Specs.All.Any(s => s.Item == item && s.Only.Holds(l))))
        {
            inspection.Note(path.Member("reference"), $"no generic {item} holds for the layout {layout.Id}", "the reading says nothing there until the engine's own is entered");
        }
    }
}
