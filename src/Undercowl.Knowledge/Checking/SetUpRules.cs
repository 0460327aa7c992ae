namespace Undercowl.Knowledge.Checking;

/// <summary>Set-up keys and what their values do to the graph.</summary>
internal static class SetUpRules
{
    public const string Here = "@here";

    public static void Check(Inspection inspection)
    {
        inspection.Ids("set-up key", inspection.SetUps.All.Select(s => s.Id), "/set-ups");
        string[] hazards = [.. inspection.Interlocks.All.SelectMany(i => i.Withholds), .. inspection.Checks.All.SelectMany(c => c.Hazards)];
        for (var i = 0; i < inspection.SetUps.All.Count; i++)
        {
            var key = inspection.SetUps.All[i];
            var path = inspection.SetUps.Path(i);
            inspection.Ids("value", key.Values.Select(v => v.Id), path.Member("values"));
            inspection.OneOf("value", key.Default, key.Values.Select(v => v.Id), path.Member("default"));
            for (var j = 0; j < key.Values.Count; j++)
            {
                var (value, at) = (key.Values[j], path.Member("values").Entry(j));
                Interventions(inspection, key, value, at);
                KnownGood(inspection, value, at);
                inspection.CautionsExist(value.Cautions, at);
                for (var k = 0; k < value.Hazards.Count && inspection.Whole("interlocks", "checks"); k++)
                {
                    inspection.OneOf("interlock or check that names the hazard", value.Hazards[k], hazards, at.Member("hazards").Entry(k));
                }
            }
        }
    }

    /// <summary>Keys and values as a condition or a given names them: without a place.</summary>
    public static void Named(Inspection inspection, IEnumerable<(string Key, OneOrMore Values)> named, string path)
    {
        foreach (var (id, values) in named)
        {
            if (inspection.Find(inspection.SetUps, id, path.Member(id)) is { } key)
            {
                foreach (var value in values.Values)
                {
                    inspection.OneOf($"value of {id},", value, key.Values.Select(v => v.Id), path.Member(id));
                }
            }
        }
    }

    /// <summary>A set-up that a check brings about: keys of a cylinder with <c>@here</c>, keys of the engine without.</summary>
    public static void BroughtAbout(Inspection inspection, IReadOnlyDictionary<string, string> setUp, string path)
    {
        foreach (var (name, value) in setUp)
        {
            var here = name.EndsWith(Here, StringComparison.Ordinal);
            var id = here ? name[..^Here.Length] : name;
            if (inspection.Find(inspection.SetUps, id, path.Member(name)) is not { } key)
            {
                continue;
            }

            if (here != (key.Per == QuantityScope.Cyl))
            {
                inspection.Report(path.Member(name), here ? $"{id} is of the whole engine" : $"{id} is of one cylinder", $"write {id}{(here ? "" : Here)}: {value}");
            }

            inspection.OneOf($"value of {id},", value, key.Values.Select(v => v.Id), path.Member(name));
        }
    }

    private static void Interventions(Inspection inspection, SetUpKey key, SetUpValue value, string path)
    {
        PartKinds(inspection, value.Without, path.Member("without"));
        PartKinds(inspection, value.KnownGood, path.Member("known-good"));
        foreach (var (id, inputs) in value.Cuts)
        {
            var at = path.Member("cuts").Member(id);
            if (Reached(inspection, key, id, at) is { } quantity)
            {
                foreach (var input in inputs.Values)
                {
                    inspection.OneOf($"input of {id},", input, quantity.Inputs.Select(i => i.Quantity), at);
                }
            }
        }

        foreach (var (id, level) in value.Sets)
        {
            var at = path.Member("sets").Member(id);
            if (Reached(inspection, key, id, at) is { } quantity)
            {
                inspection.OneOf($"level of {id},", level, quantity.Levels, at);
            }
        }

        foreach (var (id, by) in value.Lifts)
        {
            var at = path.Member("lifts").Member(id);
            if (Reached(inspection, key, id, at) is { } quantity && (by < 1 || by >= quantity.Levels.Count))
            {
                inspection.Report(at, FormattableString.Invariant($"{id} cannot be lifted by {by}"), FormattableString.Invariant($"write a number from 1 to {quantity.Levels.Count - 1}"));
            }
        }

        foreach (var (id, levels) in value.Impossible)
        {
            var at = path.Member("impossible").Member(id);
            if (inspection.Find(inspection.Quantities, id, at) is { } quantity)
            {
                foreach (var level in levels.Values)
                {
                    inspection.OneOf($"level of {id},", level, quantity.Levels, at);
                }
            }
        }
    }

    /// <summary>The quantity, when a value of this key can act on it: what is done at one cylinder is not done to the engine.</summary>
    private static Quantity? Reached(Inspection inspection, SetUpKey key, string id, string path)
    {
        var quantity = inspection.Find(inspection.Quantities, id, path);
        if (quantity is { Per: QuantityScope.Engine } && key.Per == QuantityScope.Cyl)
        {
            inspection.Report(path, $"{key.Id} is of one cylinder and cannot act on {id}, which is of the whole engine", "name a quantity that is per: cyl, or make the key per: engine");
        }

        return quantity;
    }

    private static void PartKinds(Inspection inspection, IReadOnlyList<string> kinds, string path)
    {
        for (var i = 0; i < kinds.Count; i++)
        {
            inspection.Find(inspection.Parts, kinds[i], path.Entry(i));
        }
    }

    private static void KnownGood(Inspection inspection, SetUpValue value, string path)
    {
        inspection.Chance(value.NotGood, path.Member("not-good"));
        inspection.Source(value.Source, path);
        if (value.Minutes is { } minutes)
        {
            inspection.AtLeast(0, minutes, path.Member("minutes"));
        }

        if (value.NotGood is null != (value.KnownGood.Count == 0))
        {
            inspection.Report(
                path,
                value.NotGood is null ? "known-good without the chance that it is not" : "not-good without known-good",
                value.NotGood is null ? "add not-good: and a chance" : "name the part kinds under known-good, or take not-good out");
        }

        if (value.Source is null && (value.NotGood is not null || value.Minutes is not null || value.Lifts.Count > 0))
        {
            inspection.Report(path, $"the numbers of {value.Id} have no source", "add source:");
        }
    }
}
