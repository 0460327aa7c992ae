namespace Undercowl.Knowledge.Checking;

/// <summary>What may be meant so, but is worth a look: what nothing mends, reads or uses.</summary>
internal static class NoteRules
{
    public static void Check(Inspection inspection)
    {
        Unmended(inspection);
        Unplaced(inspection);
        Unheard(inspection);
        for (var i = 0; i < inspection.Sources.All.Count; i++)
        {
            if (!inspection.SourcesUsed.Contains(inspection.Sources.All[i].Id))
            {
                inspection.Note(inspection.Sources.Path(i), $"nothing names the source {inspection.Sources.All[i].Id}", "take it out if it is not wanted");
            }
        }
    }

    private static void Unmended(Inspection inspection)
    {
        foreach (var (i, part) in inspection.Parts.All.Index())
        {
            if (inspection.Remedies.All.Any(r => r.Part == part.Id && r.Replaces))
            {
                continue;
            }

            Cure[] cures = [.. inspection.Remedies.All.SelectMany(r => r.Cures.Where(c => (c.Part ?? r.Part) == part.Id))];

            foreach (var (j, aspect) in part.Aspects.Index())
            {
                string[] left = [.. aspect.Conditions.Select(c => c.Id).Where(c => !Array.Exists(cures, cure => cure.Aspect == aspect.Id && (cure.Conditions.Count == 0 || cure.Conditions.Contains(c))))];
                if (left.Length > 0)
                {
                    inspection.Note(inspection.Parts.Path(i).Member("aspects").Entry(j), $"no remedy mends {part.Id}.{aspect.Id}: {string.Join(", ", left)}", "only referring the engine would end such a job");
                }
            }
        }
    }

    private static void Unplaced(Inspection inspection)
    {
        if (inspection.Layouts.All.Count == 0)
        {
            return;
        }

        HashSet<string> placed = [.. inspection.Layouts.All.SelectMany(l => l.Parts).Select(p => p.Part)];
        foreach (var (i, part) in inspection.Parts.All.Index().Where(p => !placed.Contains(p.Item.Id)))
        {
            inspection.Note(inspection.Parts.Path(i), $"no layout has a {part.Id}", "put it into one, or take it out");
        }

        foreach (var (i, check) in inspection.Checks.All.Index().Where(c => inspection.Parts[c.Item.At] is not null && !placed.Contains(c.Item.At)))
        {
            inspection.Note(inspection.Checks.Path(i).Member("at"), $"no layout has a {check.At} to check", "put it into one, or take the check out");
        }
    }

    private static void Unheard(Inspection inspection)
    {
        HashSet<string> heard =
        [
            .. inspection.Quantities.All.SelectMany(q => q.Inputs).Select(i => i.Quantity),
            .. inspection.Checks.All.Select(c => c.Likelihood.Quantity ?? ""),
            .. inspection.Complaints.All.Select(c => c.Quantity),
            .. inspection.Intake.All.SelectMany(q => q.Tells).Select(t => t.Quantity ?? ""),
            .. inspection.Parts.All.SelectMany(p => p.Aspects).Select(a => a.Given?.Quantity ?? ""),
        ];
        foreach (var (i, quantity) in inspection.Quantities.All.Index().Where(q => !heard.Contains(q.Item.Id)))
        {
            inspection.Note(inspection.Quantities.Path(i), $"nothing reads {quantity.Id} or follows from it", "let a check read it, or take it out");
        }
    }
}
