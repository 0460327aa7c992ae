namespace Undercowl.Knowledge.Checking;

/// <summary>Quantities: levels, inputs, the demands of each way of combining, and no circles.</summary>
internal static class QuantityRules
{
    private const int FewestLevels = 2, MostLevels = 4;

    public static void Check(Inspection inspection)
    {
        inspection.Ids("quantity", inspection.Quantities.All.Select(q => q.Id), "/quantities");
        for (var i = 0; i < inspection.Quantities.All.Count; i++)
        {
            var quantity = inspection.Quantities.All[i];
            var path = inspection.Quantities.Path(i);
            inspection.Ids("level", quantity.Levels, path.Member("levels"), member: null);
            if (quantity.Levels.Count is < FewestLevels or > MostLevels)
            {
                inspection.Report(path.Member("levels"), FormattableString.Invariant($"{quantity.Id} has {quantity.Levels.Count} levels"), FormattableString.Invariant($"list {FewestLevels} to {MostLevels}, the best first"));
            }

            Inputs(inspection, quantity, path.Member("inputs"));
            Numbers(inspection, quantity, path);
            CombinationRules.Check(inspection, quantity, path);
        }

        Circles(inspection);
    }

    private static void Inputs(Inspection inspection, Quantity quantity, string path)
    {
        for (var i = 0; i < quantity.Inputs.Count; i++)
        {
            var (input, at) = (quantity.Inputs[i], path.Entry(i));
            if (inspection.Find(inspection.Quantities, input.Quantity, at.Member("quantity")) is not { } other)
            {
                continue;
            }

            if (quantity.Per == QuantityScope.Engine && quantity.Combine != Combination.CountFold && other.Per == QuantityScope.Cyl)
            {
                inspection.Report(at, $"{quantity.Id} is of the whole engine, but {other.Id} is of one cylinder", "count the cylinders first: only count-fold takes them together");
            }

            foreach (var (from, to) in input.Map)
            {
                inspection.OneOf($"level of {other.Id},", from, other.Levels, at.Member("map").Member(from));
                inspection.OneOf($"level of {quantity.Id},", to, quantity.Levels, at.Member("map").Member(from));
            }

            if (quantity.Combine is Combination.WorstOf or Combination.Any or Combination.All)
            {
                if (!other.Levels.Any(level => Heard(quantity, input, level)))
                {
                    inspection.Report(at, $"whatever the level of {other.Id}, it leaves {quantity.Id} at its best", $"add a map from levels of {other.Id} to levels of {quantity.Id}");
                }
            }
            else if (input.Map.Count > 0)
            {
                inspection.Report(at.Member("map"), "a map is heard only by worst-of, any and all", "take it out; the levels of the input come as they are");
            }
        }
    }

    private static bool Heard(Quantity quantity, QuantityInput input, string level)
    {
        var to = input.Map.Count == 0 ? level : input.Map.GetValueOrDefault(level);
        return to is not null && quantity.Levels.Skip(1).Contains(to);
    }

    private static void Numbers(Inspection inspection, Quantity quantity, string path)
    {
        for (var i = 0; i < quantity.Numbers.Count; i++)
        {
            var at = path.Member("numbers").Entry(i);
            inspection.OneOf($"level of {quantity.Id},", quantity.Numbers[i].Level, quantity.Levels, at.Member("level"));
            inspection.Source(quantity.Numbers[i].Source, at);
        }

        SourceRules.Parameters(inspection, quantity.Parameters, path.Member("parameters"));
    }

    private static void Circles(Inspection inspection)
    {
        var clear = new HashSet<string>();
        for (var i = 0; i < inspection.Quantities.All.Count; i++)
        {
            if (Circle(inspection, inspection.Quantities.All[i].Id, [], clear) is { } circle)
            {
                inspection.Report(inspection.Quantities.Path(i).Member("inputs"), $"{circle[0]} depends on itself: {string.Join(" from ", circle)}", "take one of these inputs out");
            }
        }
    }

    /// <summary>The way from a quantity back to itself; null when there is none. Circles that it only leads to are others' to tell.</summary>
    private static List<string>? Circle(Inspection inspection, string id, List<string> way, HashSet<string> clear)
    {
        if (way.Count > 0 && way[0] == id)
        {
            return [.. way, id];
        }

        if (clear.Contains(id) || way.Contains(id) || inspection.Quantities[id] is not { } quantity)
        {
            return null;
        }

        foreach (var input in quantity.Inputs)
        {
            if (Circle(inspection, input.Quantity, [.. way, id], clear) is { } circle)
            {
                return circle;
            }
        }

        if (way.Count == 0)
        {
            clear.Add(id);
        }

        return null;
    }
}
