namespace Undercowl.Knowledge.Checking;

/// <summary>Sources, and the records that are little but a number with its source.</summary>
internal static class SourceRules
{
    public static void Check(Inspection inspection)
    {
        inspection.Ids("source", inspection.Sources.All.Select(s => s.Id), "/sources");
        for (var i = 0; i < inspection.Sources.All.Count; i++)
        {
            foreach (var (member, factor) in new[] { ("odds", inspection.Sources.All[i].Odds), ("times", inspection.Sources.All[i].Times) })
            {
                if (factor is < 1)
                {
                    inspection.Report(inspection.Sources.Path(i).Member(member), "a factor either way is 1 or more", "write 2 for half to double");
                }
            }
        }

        Parameters(inspection, inspection.Knowledge.Costs, "/costs");
        Parameters(inspection, inspection.Knowledge.Results, "/results");
        for (var i = 0; i < inspection.Knowledge.Results.Count; i++)
        {
            inspection.Chance(inspection.Knowledge.Results[i].Value, "/results".Entry(i).Member("value"));
        }
    }

    /// <summary>Of parameters with one name, all but the last need a condition, or those below it never count.</summary>
    public static void Parameters(Inspection inspection, IReadOnlyList<Parameter> parameters, string path)
    {
        var settled = new HashSet<string>();
        for (var i = 0; i < parameters.Count; i++)
        {
            inspection.Source(parameters[i].Source, path.Entry(i));
            if (settled.Contains(parameters[i].Name))
            {
                inspection.Report(path.Entry(i), $"a {parameters[i].Name} above it holds always, so this one never counts", "put the one without only last");
            }

            if (parameters[i].Only.Count == 0)
            {
                settled.Add(parameters[i].Name);
            }
        }
    }
}
