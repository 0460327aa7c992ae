namespace Undercowl.Knowledge.Checking;

/// <summary>Remedies: a replacement or cures, with their chances.</summary>
internal static class RemedyRules
{
    public static void Check(Inspection inspection)
    {
        inspection.Ids("remedy", inspection.Remedies.All.Select(r => r.Id), "/remedies");
        string[] hazards = [.. inspection.Interlocks.All.SelectMany(i => i.Withholds), .. inspection.Checks.All.SelectMany(c => c.Hazards)];
        for (var i = 0; i < inspection.Remedies.All.Count; i++)
        {
            var remedy = inspection.Remedies.All[i];
            var path = inspection.Remedies.Path(i);
            inspection.Source(remedy.Source, path);
            inspection.CautionsExist(remedy.Cautions, path);
            inspection.HazardsCarried(remedy.Cautions, remedy.Hazards, path);
            inspection.AtLeast(1, remedy.Revision, path.Member("revision"));
            inspection.AtLeast(0, remedy.Minutes, path.Member("minutes"));
            inspection.AtLeast(0, remedy.Parts, path.Member("parts"));
            inspection.Chance(remedy.NewPartBad, path.Member("new-part-bad"));
            for (var k = 0; k < remedy.Hazards.Count && inspection.Whole("interlocks", "checks"); k++)
            {
                // A hazard spelt wrongly would withhold nothing.
                inspection.OneOf("interlock or check that names the hazard", remedy.Hazards[k], hazards, path.Member("hazards").Entry(k));
            }

            for (var k = 0; k < remedy.Meets.Count && inspection.Whole("interlocks"); k++)
            {
                inspection.OneOf("condition of lifting an interlock", remedy.Meets[k], inspection.Interlocks.All.SelectMany(r => r.Lift).Select(l => l.Id), path.Member("meets").Entry(k));
            }

            Helped(inspection, remedy.HelpedBy, path.Member("helped-by"));
            if (remedy.Replaces == remedy.Cures.Count > 0)
            {
                inspection.Report(path, remedy.Replaces ? "a replacement makes all aspects fresh and cures none besides" : $"{remedy.Id} changes nothing", "write replaces: true, or cures, and not both");
            }

            if (remedy.Replaces != remedy.NewPartBad is not null)
            {
                inspection.Report(path, remedy.Replaces ? "a replacement without the chance that the new part is bad" : "new-part-bad is of a replacement", remedy.Replaces ? "add new-part-bad: and a chance" : "take it out");
            }

            if (inspection.Find(inspection.Parts, remedy.Part, path.Member("part")) is { } part)
            {
                Cures(inspection, remedy, part, path.Member("cures"));
            }
        }
    }

    private static void Helped(Inspection inspection, Help? help, string path)
    {
        if (help is null)
        {
            return;
        }

        for (var i = 0; i < help.Tools.Count; i++)
        {
            inspection.Find(inspection.Tools, help.Tools[i], path.Member("tools").Entry(i));
        }

        if (inspection.Find(inspection.SetUps, help.SetUp, path.Member("set-up")) is { } key
            && inspection.OneOf($"value of {key.Id}", help.Value, key.Values.Select(v => v.Id), path.Member("value"))
            && key.Values.First(v => v.Id == help.Value) is var value
            && (key.Per != QuantityScope.Engine || value.Lifts.Count == 0 || value.Minutes is null || value.Restore is null))
        {
            inspection.Report(path.Member("value"), $"{help.SetUp}: {help.Value} is no help", "name a state of the whole engine that lifts something, takes minutes and says how it is undone");
        }
    }

    private static void Cures(Inspection inspection, Remedy remedy, PartKind own, string path)
    {
        for (var i = 0; i < remedy.Cures.Count; i++)
        {
            var (cure, at) = (remedy.Cures[i], path.Entry(i));
            inspection.Chance(cure.NotCured, at.Member("not-cured"));
            var part = cure.Part is null ? own : inspection.Find(inspection.Parts, cure.Part, at.Member("part"));
            if (part is null || !inspection.OneOf($"aspect of {part.Id},", cure.Aspect, part.Aspects.Select(a => a.Id), at.Member("aspect")))
            {
                continue;
            }

            string[] conditions = [.. part.Aspects.First(a => a.Id == cure.Aspect).Conditions.Select(c => c.Id)];
            for (var j = 0; j < cure.Conditions.Count; j++)
            {
                inspection.OneOf($"condition of {part.Id}.{cure.Aspect},", cure.Conditions[j], conditions, at.Member("conditions").Entry(j));
            }
        }
    }
}
