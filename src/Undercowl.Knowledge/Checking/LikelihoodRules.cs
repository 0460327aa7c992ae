namespace Undercowl.Knowledge.Checking;

/// <summary>What a check reads, and how surely.</summary>
internal static class LikelihoodRules
{
    /// <summary>No reading may count as impossible: the least chance of a choice, whatever is the case.</summary>
    private const double LeastChance = 0.002;

    private const double SumTolerance = 1e-6;

    public static void Check(Inspection inspection, Check check, string path)
    {
        var model = check.Likelihood;
        inspection.Source(model.Source, path);
        inspection.Chance(model.Fresh, path.Member("fresh"));
        inspection.Chance(model.Outlier, path.Member("outlier"));
        Unused(inspection, model, path);
        var levels = Levels(inspection, check, path);
        switch (model.Model)
        {
            case LikelihoodModel.Table:
                Table(inspection, check, levels, path);
                break;
            case LikelihoodModel.Gap:
                GapRules.Check(inspection, check, path);
                break;
            default:
                DensityRules.Check(inspection, check, levels, path);
                break;
        }
    }

    /// <summary>Reports keys that are no levels, and levels that are no keys.</summary>
    public static void Cover(Inspection inspection, IEnumerable<string> keys, IReadOnlyList<string> levels, string path)
    {
        foreach (var key in keys)
        {
            inspection.OneOf("level or condition", key, levels, path.Member(key));
        }

        foreach (var level in levels.Where(l => !keys.Contains(l)))
        {
            inspection.Report(path, $"there is no row for {level}", $"add {level}:");
        }
    }

    /// <summary>What the aspect of a part, as <c>kind.aspect</c>, can be, sound first; null when there is none, which is reported.</summary>
    public static IReadOnlyList<string>? Conditions(Inspection inspection, string aspect, string path) =>
        Dotted(inspection, aspect, inspection.Parts, p => p.Aspects.Select(a => (a.Id, a.Conditions.Select(c => c.Id))), path);

    /// <summary>Names of what is read, best first; null when it is not known.</summary>
    private static IReadOnlyList<string>? Levels(Inspection inspection, Check check, string path)
    {
        var model = check.Likelihood;
        if ((model.Quantity is null ? 0 : 1) + (model.Aspect is null ? 0 : 1) + (model.Tool is null ? 0 : 1) != 1)
        {
            inspection.Report(path, "a check reads one thing", "write exactly one of quantity, aspect, tool");
            return null;
        }

        if (model.Quantity is { } id)
        {
            var quantity = inspection.Find(inspection.Quantities, id, path.Member("quantity"));
            if (quantity is { Per: QuantityScope.Cyl } && check.At == "engine")
            {
                inspection.Report(path.Member("quantity"), $"{id} is of one cylinder, but the check is of the engine", "write at: cyl, or read a quantity of the engine");
            }

            return quantity?.Levels;
        }

        return model.Aspect is { } aspect
            ? Conditions(inspection, aspect, path.Member("aspect"))
            : Dotted(inspection, model.Tool!, inspection.Tools, t => t.Aspects.Select(a => (a.Id, a.Conditions.Select(c => c.Id))), path.Member("tool"));
    }

    private static IReadOnlyList<string>? Dotted<T>(
        Inspection inspection, string text, Index<T> index, Func<T, IEnumerable<(string Aspect, IEnumerable<string> Conditions)>> aspects, string path)
        where T : class
    {
        var dot = text.LastIndexOf('.');
        if (dot < 0)
        {
            inspection.Report(path, $"{text} names no aspect", $"write {text}. and the aspect");
            return null;
        }

        return inspection.Find(index, text[..dot], path) is { } owner
            && inspection.OneOf($"aspect of {text[..dot]},", text[(dot + 1)..], aspects(owner).Select(a => a.Aspect), path)
            ? [PartRules.Sound, .. aspects(owner).First(a => a.Aspect == text[(dot + 1)..]).Conditions]
            : null;
    }

    private static void Table(Inspection inspection, Check check, IReadOnlyList<string>? levels, string path)
    {
        var given = path.Member("given");
        string[] choices = [.. check.Choices.Select(c => c.Id)];
        if (check.Number is not null)
        {
            inspection.Report(path.Member("model"), "a table reads choices, not a number", "write model: density, or choices instead of number");
            return;
        }

        if (levels is not null)
        {
            Cover(inspection, check.Likelihood.Given.Keys, levels, given);
        }

        foreach (var (level, row) in check.Likelihood.Given)
        {
            Row(inspection, level, row, choices, given.Member(level));
        }

        foreach (var worst in RepeatRule.Gains(check).Where(g => g.Decibels >= RepeatRule.Most))
        {
            inspection.Report(
                given.Member(worst.Against).Member(worst.Choice),
                FormattableString.Invariant($"{worst.Choice} seen again and again would weigh {worst.Decibels:0.0} dB more for {worst.For} against {worst.Against} than seen once"),
                FormattableString.Invariant($"raise the chance of {worst.Choice} at {worst.Against}, or lower fresh to {worst.FreshAtMost:0.####}"));
        }
    }

    /// <summary>A row of chances over choices: each is named, none is impossible, and they sum to 1.</summary>
    public static void Row(Inspection inspection, string level, Dictionary<string, double> row, string[] choices, string path)
    {
        foreach (var (choice, chance) in row)
        {
            inspection.OneOf("choice", choice, choices, path.Member(choice));
            inspection.Chance(chance, path.Member(choice));
        }

        foreach (var choice in choices.Where(c => row.GetValueOrDefault(c) < LeastChance))
        {
            inspection.Report(
                row.ContainsKey(choice) ? path.Member(choice) : path,
                FormattableString.Invariant($"{choice} is as good as impossible at {level}"),
                FormattableString.Invariant($"write {LeastChance} or more: people err"));
        }

        var sum = row.Values.Sum();
        if (Math.Abs(sum - 1) > SumTolerance)
        {
            inspection.Report(path, FormattableString.Invariant($"the row of {level} adds up to {sum:0.######}"), "make it 1");
        }
    }

    private static void Unused(Inspection inspection, Likelihood model, string path)
    {
        (string Name, bool There, bool Wanted)[] members =
        [
            ("given", model.Given.Count > 0, model.Model == LikelihoodModel.Table),
            ("gap", model.Gap is not null, model.Model == LikelihoodModel.Gap),
            ("spread", model.Spread is not null, model.Model == LikelihoodModel.Gap),
            ("gap-choices", model.GapChoices is not null, model.Model == LikelihoodModel.Gap),
            ("reference", model.Reference is not null, model.Model == LikelihoodModel.Density),
            ("densities", model.Densities.Count > 0, model.Model == LikelihoodModel.Density),
        ];
        var name = model.Model.ToString().ToLowerInvariant();
        foreach (var (member, there, wanted) in members)
        {
            if (there && !wanted)
            {
                inspection.Report(path.Member(member), $"the model {name} does not use {member}", "take it out, or name another model");
            }

            if (wanted && !there)
            {
                inspection.Report(path, $"the model {name} needs {member}", $"add {member}:");
            }
        }

        (string Name, bool There)[] densityOnly = [("generic-spread", model.GenericSpread is not null), ("fellows", model.Fellows), ("correct", model.Correct != Correction.None)];
        foreach (var (member, there) in densityOnly)
        {
            if (there && model.Model != LikelihoodModel.Density)
            {
                inspection.Report(path.Member(member), $"the model {name} does not use {member}", "take it out, or name another model");
            }
        }
    }
}
