namespace Undercowl.Knowledge.Checking;

/// <summary>Tools and hands.</summary>
internal static class ToolRules
{
    private static readonly string[] Shapes = ["needle", "blunt-points", "near-uniform", "sphere"];

    public static void Check(Inspection inspection)
    {
        inspection.Ids("tool", inspection.Tools.All.Select(t => t.Id), "/tools");
        for (var i = 0; i < inspection.Tools.All.Count; i++)
        {
            var tool = inspection.Tools.All[i];
            var path = inspection.Tools.Path(i);
            if (tool.Shape is { } shape)
            {
                inspection.OneOf("electrode shape", shape, Shapes, path.Member("shape"));
            }

            if (tool.InsteadOf is { } other)
            {
                inspection.Find(inspection.Tools, other, path.Member("instead-of"));
                if (tool.Aspects.Count == 0)
                {
                    inspection.Report(path.Member("instead-of"), $"{tool.Id} stands in for {other} and never errs by it", "add an aspect with what it misleads by");
                }
            }

            if (tool.LeadOhms is { } ohms)
            {
                inspection.AtLeast(0, ohms, path.Member("lead-ohms"));
                inspection.Source(tool.Source ?? "", path);
            }

            inspection.Ids("aspect", tool.Aspects.Select(a => a.Id), path.Member("aspects"));
            for (var j = 0; j < tool.Aspects.Count; j++)
            {
                Conditions(inspection, tool.Aspects[j], path.Member("aspects").Entry(j));
            }
        }

        Hands(inspection);
    }

    private static void Conditions(Inspection inspection, ToolAspect aspect, string path)
    {
        var conditions = path.Member("conditions");
        inspection.Ids("condition", aspect.Conditions.Select(c => c.Id), conditions);
        for (var i = 0; i < aspect.Conditions.Count; i++)
        {
            inspection.Chance(aspect.Conditions[i].Prior, conditions.Entry(i).Member("prior"));
            inspection.Source(aspect.Conditions[i].Source, conditions.Entry(i));
            if (aspect.Conditions[i].Id == PartRules.Sound)
            {
                inspection.Report(conditions.Entry(i).Member("id"), $"{PartRules.Sound} is there without being listed", "list the faults only");
            }
        }

        var sum = aspect.Conditions.Sum(c => c.Prior);
        if (sum >= 1)
        {
            inspection.Report(conditions, FormattableString.Invariant($"the chances of the faults of {aspect.Id} add up to {sum:0.######}"), $"lower them: what is left of 1 is the chance that it is {PartRules.Sound}");
        }
    }

    private static void Hands(Inspection inspection)
    {
        inspection.Ids("hand", inspection.Hands.All.Select(h => h.Id), "/hands");
        string[] hazards = [.. SafetyRules.Arising(inspection.Knowledge), .. inspection.Interlocks.All.SelectMany(i => i.Withholds)];
        for (var i = 0; i < inspection.Hands.All.Count; i++)
        {
            var hand = inspection.Hands.All[i];
            var path = inspection.Hands.Path(i);
            inspection.Chance(hand.Doubt, path.Member("doubt"));
            inspection.Source(hand.Source, path);
            for (var j = 0; j < hand.Spared.Count && inspection.Whole("interlocks", "checks", "set-ups"); j++)
            {
                inspection.OneOf("check, set-up or interlock with the hazard", hand.Spared[j], hazards, path.Member("spared").Entry(j));
            }
        }
    }
}
