namespace Undercowl.Knowledge.Checking;

/// <summary>Questions of the interview: their answers, and what those tell of common causes and quantities.</summary>
internal static class IntakeRules
{
    /// <summary>The level of a common cause that befell the engine.</summary>
    public const string Befell = "yes";

    public static void Check(Inspection inspection)
    {
        inspection.Ids("intake question", inspection.Intake.All.Select(q => q.Id), "/intake");
        for (var i = 0; i < inspection.Intake.All.Count; i++)
        {
            var question = inspection.Intake.All[i];
            var path = inspection.Intake.Path(i);
            string[] answers = [.. question.Answers.Select(a => a.Id)];
            inspection.Ids("answer", answers, path.Member("answers"));
            inspection.Source(question.Source, path);
            if (question.Tells.Count > 0 != question.Usually.Count > 0 || question.Usually.Count > 0 != question.Source is not null)
            {
                inspection.Report(path, "usually, its source and tells belong together", "write all three, or none where the answer tells nothing");
                continue;
            }

            if (question.Usually.Count > 0)
            {
                LikelihoodRules.Row(inspection, "usually", question.Usually, answers, path.Member("usually"));
            }

            for (var j = 0; j < question.Tells.Count; j++)
            {
                Telling(inspection, question.Tells[j], answers, path.Member("tells").Entry(j));
            }
        }
    }

    private static void Telling(Inspection inspection, Telling telling, string[] answers, string path)
    {
        inspection.Source(telling.Source, path);
        if (telling.CommonCause is null == telling.Quantity is null)
        {
            inspection.Report(path, "an answer tells of one thing at a time", "write exactly one of common-cause, quantity");
            return;
        }

        string[] levels = telling.CommonCause is { } cause
            ? inspection.Find(inspection.CommonCauses, cause, path.Member("common-cause")) is null ? [] : [Befell]
            : inspection.Find(inspection.Quantities, telling.Quantity!, path.Member("quantity")) is { } quantity ? Tellable(inspection, quantity, path) : [];
        foreach (var (level, row) in telling.Given)
        {
            var at = path.Member("given").Member(level);
            if (levels.Length > 0)
            {
                inspection.OneOf(telling.CommonCause is null ? $"level of {telling.Quantity} but its best," : "level", level, levels, at);
            }

            LikelihoodRules.Row(inspection, level, row, answers, at);
        }

        if (telling.Given.Count == 0)
        {
            inspection.Report(path.Member("given"), "nothing is told", "add a row for a level");
        }
    }

    private static string[] Tellable(Inspection inspection, Quantity quantity, string path)
    {
        if (quantity.Per != QuantityScope.Engine)
        {
            inspection.Report(path.Member("quantity"), $"{quantity.Id} is of one cylinder, and nobody on the phone knows which", "name a quantity of the engine");
        }

        return [.. quantity.Levels.Skip(1)];
    }
}
