namespace Undercowl.Knowledge.Checking;

/// <summary>Part kinds: aspects, conditions, their chances and effects.</summary>
internal static class PartRules
{
    public const string Sound = "sound";

    public static void Check(Inspection inspection)
    {
        inspection.Ids("part kind", inspection.Parts.All.Select(p => p.Id), "/parts");
        for (var i = 0; i < inspection.Parts.All.Count; i++)
        {
            var part = inspection.Parts.All[i];
            var path = inspection.Parts.Path(i).Member("aspects");
            inspection.Ids("aspect", part.Aspects.Select(a => a.Id), path);
            for (var j = 0; j < part.Aspects.Count; j++)
            {
                Aspect(inspection, part, part.Aspects[j], path.Entry(j));
            }
        }
    }

    private static void Aspect(Inspection inspection, PartKind part, Aspect aspect, string path)
    {
        var conditions = path.Member("conditions");
        inspection.Ids("condition", aspect.Conditions.Select(c => c.Id), conditions);
        if (aspect.Conditions.Count == 0)
        {
            inspection.Report(path, $"the aspect {aspect.Id} has no conditions", "list its faults, or take the aspect out");
        }

        for (var i = 0; i < aspect.Conditions.Count; i++)
        {
            Condition(inspection, aspect.Conditions[i], conditions.Entry(i));
        }

        Sum(inspection, part, aspect, c => c.Prior, "", conditions);
        if (aspect.Given is { } given)
        {
            Given(inspection, part, aspect, given, path.Member("given"));
        }
    }

    private static void Condition(Inspection inspection, Condition condition, string path)
    {
        if (condition.Id == Sound)
        {
            inspection.Report(path.Member("id"), $"{Sound} is there without being listed", "list the faults only");
        }

        inspection.Chance(condition.Prior, path.Member("prior"));
        inspection.Chance(condition.Shows, path.Member("shows"));
        inspection.Source(condition.Source, path);
        SetUpRules.Named(inspection, condition.When.Select(w => (w.Key, w.Value)), path.Member("when"));
        foreach (var (id, level) in condition.Effects)
        {
            var at = path.Member("effects").Member(id);
            if (inspection.Find(inspection.Quantities, id, at) is not { } quantity || !inspection.OneOf($"level of {id},", level, quantity.Levels, at))
            {
                continue;
            }

            if (level == quantity.Levels[0])
            {
                inspection.Report(at, $"{level} is the best level of {id}, so this does nothing", $"use one of: {string.Join(", ", quantity.Levels.Skip(1))}");
            }

            if (quantity.Combine is not (Combination.WorstOf or Combination.Any))
            {
                inspection.Report(at, $"{id} follows from its inputs alone and hears no condition", "name a quantity that combines by worst-of or any");
            }
        }
    }

    private static void Given(Inspection inspection, PartKind part, Aspect aspect, AspectGiven given, string path)
    {
        inspection.Source(given.Source, path);
        SetUpRules.Named(inspection, given.SetUp.Select(s => (s.Key, new OneOrMore([s.Value]))), path.Member("set-up"));
        var rows = path.Member("rows");
        if (inspection.Find(inspection.Quantities, given.Quantity, path.Member("quantity")) is not { } quantity)
        {
            return;
        }

        foreach (var level in quantity.Levels.Where(l => !given.Rows.ContainsKey(l)))
        {
            inspection.Report(rows, $"there is no row for the level {level} of {quantity.Id}", $"add {level}: {{}} or with chances");
        }

        foreach (var (level, row) in given.Rows)
        {
            inspection.OneOf($"level of {quantity.Id},", level, quantity.Levels, rows.Member(level));
            foreach (var (fault, chance) in row)
            {
                inspection.OneOf($"condition of {aspect.Id},", fault, aspect.Conditions.Select(c => c.Id), rows.Member(level).Member(fault));
                inspection.Chance(chance, rows.Member(level).Member(fault));
            }

            Sum(inspection, part, aspect, c => row.GetValueOrDefault(c.Id, c.Prior), $" at {level}", rows.Member(level));
        }
    }

    /// <summary>Chances of the conditions that one layout can have leave something for sound.</summary>
    private static void Sum(Inspection inspection, PartKind part, Aspect aspect, Func<Condition, double> chance, string where, string path)
    {
        IEnumerable<EngineLayout?> layouts = inspection.Layouts.All.Where(l => l.Parts.Any(p => p.Part == part.Id) && aspect.Only.Holds(l));
        foreach (var layout in layouts.Append(null))
        {
            var sum = aspect.Conditions.Where(c => layout is null ? c.Only.Count == 0 : c.Only.Holds(layout)).Sum(chance);
            if (sum >= 1)
            {
                inspection.Report(
                    path,
                    FormattableString.Invariant($"the chances of the faults of {aspect.Id}{where} add up to {sum:0.######}{(layout is null ? "" : $" in the layout {layout.Id}")}"),
                    $"lower them: what is left of 1 is the chance that it is {Sound}");
                return;
            }
        }
    }
}
