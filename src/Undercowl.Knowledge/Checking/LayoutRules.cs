namespace Undercowl.Knowledge.Checking;

/// <summary>Layouts: cylinders, firing order, banks, and parts at places that exist.</summary>
internal static class LayoutRules
{
    public static void Check(Inspection inspection)
    {
        inspection.Ids("layout", inspection.Layouts.All.Select(l => l.Id), "/layouts");
        for (var i = 0; i < inspection.Layouts.All.Count; i++)
        {
            var layout = inspection.Layouts.All[i];
            var path = inspection.Layouts.Path(i);
            if (layout.Cylinders is < 1 or > LayoutPlaces.MostCylinders)
            {
                inspection.Report(path.Member("cylinders"), FormattableString.Invariant($"{layout.Cylinders} cylinders"), FormattableString.Invariant($"write a number from 1 to {LayoutPlaces.MostCylinders}"));
                continue;
            }

            FiringOrder(inspection, layout, path.Member("firing-order"));
            Banks(inspection, layout, path.Member("banks"));
            Parts(inspection, layout, path.Member("parts"));
            if (inspection.Whole("complaints", "quantities") && !inspection.Complaints.All.Any(c => c.Only.Holds(layout) && inspection.Quantities[c.Quantity] is not null))
            {
                inspection.Report(path, $"no complaint is made of an engine like {layout.Id}", "add a complaint whose only holds for this layout");
            }
        }
    }

    private static void FiringOrder(Inspection inspection, EngineLayout layout, string path)
    {
        if (layout.FiringOrder.Count > 0 && !layout.FiringOrder.Order().SequenceEqual(Enumerable.Range(1, layout.Cylinders)))
        {
            inspection.Report(path, "the firing order does not name every cylinder once", FormattableString.Invariant($"order the numbers 1 to {layout.Cylinders}, or take it out"));
        }
    }

    private static void Banks(Inspection inspection, EngineLayout layout, string path)
    {
        var taken = new HashSet<int>();
        foreach (var (letter, cylinders) in layout.Banks)
        {
            if (letter is not [>= 'A' and <= 'Z'])
            {
                inspection.Report(path.Member(letter), $"\"{letter}\" is not a bank", "name banks by one capital letter, such as A");
            }

            foreach (var cylinder in cylinders)
            {
                if (cylinder < 1 || cylinder > layout.Cylinders || !taken.Add(cylinder))
                {
                    inspection.Report(
                        path.Member(letter),
                        FormattableString.Invariant($"cylinder {cylinder} is not there or in two banks"),
                        FormattableString.Invariant($"give each of the cylinders 1 to {layout.Cylinders} to one bank"));
                }
            }
        }
    }

    private static void Parts(Inspection inspection, EngineLayout layout, string path)
    {
        var placed = new HashSet<string>();
        for (var i = 0; i < layout.Parts.Count; i++)
        {
            var (entry, at) = (layout.Parts[i], path.Entry(i));
            inspection.Find(inspection.Parts, entry.Part, at.Member("part"));
            foreach (var place in entry.At.Values.SelectMany(word => LayoutPlaces.Expand(layout, word)))
            {
                if (LayoutPlaces.Wrong(layout, place, out _) is var (message, mend))
                {
                    inspection.Report(at.Member("at"), message, mend);
                }
                else if (!placed.Add($"{entry.Part}@{place}"))
                {
                    inspection.Report(at, $"{entry.Part}@{place} is there already", "take one of the two out");
                }
            }
        }
    }
}
