namespace Undercowl.Knowledge.Checking;

/// <summary>What each way of combining asks of a quantity.</summary>
internal static class CombinationRules
{
    public static void Check(Inspection inspection, Quantity quantity, string path)
    {
        switch (quantity.Combine)
        {
            case Combination.Any or Combination.All:
                Levels(inspection, quantity, 2, path);
                break;
            case Combination.Table:
                Table(inspection, quantity, path);
                break;
            case Combination.CountFold:
                Levels(inspection, quantity, 4, path);
                Fold(inspection, quantity, path);
                break;
            case Combination.SparkInAir or Combination.SparkInCylinder:
                Levels(inspection, quantity, 3, path);
                SparkRules.Check(inspection, quantity, path);
                break;
        }

        if (quantity.Combine is not (Combination.WorstOf or Combination.Any) && quantity.Inputs.Count == 0)
        {
            inspection.Report(path, $"{quantity.Id} follows from inputs, but has none", "list its inputs");
        }

        if (quantity.Combine != Combination.Table && quantity.Rows.Count > 0)
        {
            inspection.Report(path.Member("rows"), "rows are read only when combine is table", "take them out, or write combine: table");
        }
    }

    private static void Levels(Inspection inspection, Quantity quantity, int wanted, string path)
    {
        if (quantity.Levels.Count != wanted)
        {
            inspection.Report(
                path.Member("levels"), FormattableString.Invariant($"this way of combining has {wanted} levels, but {quantity.Id} has {quantity.Levels.Count}"), FormattableString.Invariant($"list {wanted}, the best first"));
        }
    }

    private static void Fold(Inspection inspection, Quantity quantity, string path)
    {
        if (quantity.Per != QuantityScope.Engine)
        {
            inspection.Report(path.Member("per"), "a count over the cylinders is of the whole engine", "write per: engine");
        }

        if (quantity.Inputs.Count > 1)
        {
            inspection.Report(path.Member("inputs"), "a count is over one quantity", "keep one input");
        }

        if (quantity.Inputs.Count > 0 && inspection.Quantities[quantity.Inputs[0].Quantity] is { Per: QuantityScope.Engine } input)
        {
            inspection.Report(path.Member("inputs"), $"{input.Id} is of the whole engine and cannot be counted", "count a quantity that is per: cyl");
        }
    }

    private static void Table(Inspection inspection, Quantity quantity, string path)
    {
        var inputs = quantity.Inputs.Select(i => inspection.Quantities[i.Quantity]).ToArray();
        var rows = path.Member("rows");
        for (var i = 0; i < quantity.Rows.Count; i++)
        {
            inspection.OneOf($"level of {quantity.Id},", quantity.Rows[i].Is, quantity.Levels, rows.Entry(i).Member("is"));
            foreach (var (input, levels) in quantity.Rows[i].When)
            {
                var at = rows.Entry(i).Member("when").Member(input);
                if (inspection.OneOf($"input of {quantity.Id},", input, quantity.Inputs.Select(q => q.Quantity), at) && inspection.Quantities[input] is { } known)
                {
                    foreach (var level in levels.Values)
                    {
                        inspection.OneOf($"level of {input},", level, known.Levels, at);
                    }
                }
            }
        }

        if (quantity.Levels.Count > 0 && Array.TrueForAll(inputs, i => i?.Levels.Count > 0))
        {
            Cover(inspection, quantity, inputs!, rows);
        }
    }

    /// <summary>Every combination of levels has a row, and every row has a combination that comes to it.</summary>
    private static void Cover(Inspection inspection, Quantity quantity, Quantity[] inputs, string rows)
    {
        var used = new bool[quantity.Rows.Count];
        var at = new int[inputs.Length];
        string? open = null;
        do
        {
            var row = quantity.Rows.Index().FirstOrDefault(
                r => inputs.Index().All(i => !r.Item.When.TryGetValue(i.Item.Id, out var wanted) || wanted.Contains(i.Item.Levels[at[i.Index]])), (-1, null!)).Index;
            if (row >= 0)
            {
                used[row] = true;
            }
            else
            {
                open ??= string.Join(", ", inputs.Index().Select(i => $"{i.Item.Id}: {i.Item.Levels[at[i.Index]]}"));
            }
        }
        while (Next(at, inputs));
        if (open is not null)
        {
            inspection.Report(rows, $"there is no row for {open}", $"end with a row without when, such as - {{is: {quantity.Levels[0]}}}");
        }

        foreach (var i in used.Index().Where(u => !u.Item).Select(u => u.Index))
        {
            inspection.Report(rows.Entry(i), "the rows above leave nothing for this one", "move it up or take it out");
        }
    }

    private static bool Next(int[] at, Quantity[] inputs)
    {
        for (var i = at.Length - 1; i >= 0; i--)
        {
            if (++at[i] < inputs[i].Levels.Count)
            {
                return true;
            }

            at[i] = 0;
        }

        return false;
    }
}
