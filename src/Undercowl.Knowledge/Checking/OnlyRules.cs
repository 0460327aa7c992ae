namespace Undercowl.Knowledge.Checking;

/// <summary>Conditions on layouts name attributes and values that some layout has; else they are slips of the pen.</summary>
internal static class OnlyRules
{
    public static void Check(Inspection inspection)
    {
        if (inspection.Layouts.All.Count == 0 || !inspection.Whole("layouts"))
        {
            return;
        }

        var known = inspection.Layouts.All.SelectMany(l => l.Attributes).ToLookup(a => a.Key, a => a.Value);
        foreach (var (path, only) in All(inspection.Knowledge))
        {
            foreach (var (attribute, values) in only)
            {
                var at = path.Member("only").Member(attribute);
                if (inspection.OneOf("layout with the attribute", attribute, known.Select(k => k.Key), at))
                {
                    foreach (var value in values.Values)
                    {
                        inspection.OneOf($"layout whose {attribute} is", value, known[attribute], at);
                    }
                }
            }
        }
    }

    private static IEnumerable<(string Path, Only Only)> All(KnowledgeBase knowledge) =>
    [
        .. In(knowledge.Parts, "/parts", (part, path) =>
        [
            .. In(part.Aspects, path.Member("aspects"), (aspect, inner) =>
                [(inner, aspect.Only), .. In(aspect.Conditions, inner.Member("conditions"), (c, p) => [(p, c.Only)])]),
        ]),
        .. In(knowledge.Quantities, "/quantities", (quantity, path) =>
        [
            .. In(quantity.Inputs, path.Member("inputs"), (i, p) => [(p, i.Only)]),
            .. In(quantity.Numbers, path.Member("numbers"), (n, p) => [(p, n.Only)]),
            .. In(quantity.Parameters, path.Member("parameters"), (n, p) => [(p, n.Only)]),
        ]),
        .. In(knowledge.Checks, "/checks", (check, path) =>
        [
            (path, check.Only),
            .. In(check.Settings, path.Member("settings"), (s, inner) => In(s.Defaults, inner.Member("defaults"), (d, p) => [(p, d.Only)])),
        ]),
        .. In(knowledge.Specs, "/specs", (s, p) => [(p, s.Only)]),
        .. In(knowledge.Remedies, "/remedies", (r, p) => [(p, r.Only)]),
        .. In(knowledge.Complaints, "/complaints", (c, p) => [(p, c.Only)]),
        .. In(knowledge.CommonCauses, "/common-causes", (c, p) => [(p, c.Only)]),
        .. In(knowledge.Costs, "/costs", (c, p) => [(p, c.Only)]),
        .. In(knowledge.Results, "/results", (r, p) => [(p, r.Only)]),
    ];

    private static IEnumerable<(string Path, Only Only)> In<T>(IReadOnlyList<T> list, string path, Func<T, string, IEnumerable<(string Path, Only Only)>> of) =>
        list.SelectMany((item, i) => of(item, path.Entry(i)));
}
