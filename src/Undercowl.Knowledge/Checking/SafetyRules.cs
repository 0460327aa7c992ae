namespace Undercowl.Knowledge.Checking;

/// <summary>Cautions, and interlocks whose events can happen.</summary>
internal static class SafetyRules
{
    public static void Check(Inspection inspection)
    {
        inspection.Ids("caution", inspection.Cautions.All.Select(c => c.Id), "/cautions");
        for (var i = 0; i < inspection.Cautions.All.Count; i++)
        {
            inspection.Source(inspection.Cautions.All[i].Source, inspection.Cautions.Path(i));
        }

        inspection.Ids("interlock", inspection.Interlocks.All.Select(l => l.Id), "/interlocks");
        string[] hazards = [.. Arising(inspection.Knowledge)];
        for (var i = 0; i < inspection.Interlocks.All.Count; i++)
        {
            Interlock(inspection, inspection.Interlocks.All[i], inspection.Interlocks.Path(i), hazards);
        }
    }

    /// <summary>The hazards that a check, a set-up or a remedy brings.</summary>
    public static IEnumerable<string> Arising(KnowledgeBase knowledge) =>
        [.. knowledge.Checks.SelectMany(c => c.Hazards), .. knowledge.SetUps.SelectMany(s => s.Values).SelectMany(v => v.Hazards), .. knowledge.Remedies.SelectMany(r => r.Hazards)];

    private static void Interlock(Inspection inspection, Interlock rule, string path, string[] hazards)
    {
        inspection.Source(rule.Source, path);
        inspection.Ids("statement", rule.Lift.Select(l => l.Id), path.Member("lift"));
        for (var i = 0; i < rule.Withholds.Count && inspection.Whole("checks", "set-ups", "remedies"); i++)
        {
            inspection.OneOf("check, set-up or remedy with the hazard", rule.Withholds[i], hazards, path.Member("withholds").Entry(i));
        }

        if (rule.Smelt is { } smelt)
        {
            inspection.OneOf("statement of lift", smelt.States, rule.Lift.Select(l => l.Id), path.Member("smelt").Member("states"));
            inspection.Ids("place", smelt.Places, path.Member("smelt").Member("places"), member: null);
        }

        Events(inspection, rule.ClearedBy, path.Member("cleared-by"));
        Events(inspection, rule.OpenedBy, path.Member("opened-by"));
        if (rule.UntilKnown && rule.ClearedBy.Count == 0 && rule.Lift.Count == 0)
        {
            inspection.Report(path, $"nothing ever clears {rule.Id}", "add cleared-by or lift");
        }

        if (!rule.UntilKnown && rule.OpenedBy.Count == 0)
        {
            inspection.Report(path, $"nothing ever closes {rule.Id}", "add until-known: true or opened-by");
        }
        else if (rule.OpenedBy.Count > 0 && rule.ClearedBy.Count == 0 && rule.Lift.Count == 0)
        {
            inspection.Report(path, $"once closed, {rule.Id} stays so", "add lift or cleared-by");
        }
    }

    private static void Events(Inspection inspection, IReadOnlyList<InterlockEvent> events, string path)
    {
        for (var i = 0; i < events.Count; i++)
        {
            var (what, at) = (events[i], path.Entry(i));
            if ((what.Check is null ? 0 : 1) + (what.Does is null ? 0 : 1) + (what.Question is null ? 0 : 1) != 1)
            {
                inspection.Report(at, "an event is a check, a deed or a question", "write exactly one of check, does, question");
            }

            if ((what.Choice is not null && what.Check is null) || (what.Answer is not null && what.Question is null))
            {
                inspection.Report(at, "a choice belongs to a check and an answer to a question", "name the check or question, or take it out");
            }

            if (what.Check is { } id && inspection.Find(inspection.Checks, id, at.Member("check")) is { } check)
            {
                Options(inspection, $"choice of {id},", what.Choice, check.Choices, at.Member("choice"));
            }

            if (what.Question is { } asked && inspection.Find(inspection.Intake, asked, at.Member("question")) is { } question)
            {
                Options(inspection, $"answer to {asked},", what.Answer, question.Answers, at.Member("answer"));
            }

            if (what.Does is { } deed && inspection.Whole("remedies"))
            {
                inspection.OneOf("remedy that does", deed, inspection.Remedies.All.SelectMany(r => r.Does), at.Member("does"));
            }
        }
    }

    private static void Options(Inspection inspection, string word, OneOrMore? named, IReadOnlyList<Option> known, string path)
    {
        foreach (var name in named?.Values ?? [])
        {
            inspection.OneOf(word, name, known.Select(k => k.Id), path);
        }
    }
}
