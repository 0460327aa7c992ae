namespace Undercowl.Knowledge.Checking;

/// <summary>Renamed ids lead from one that is gone to one that is there.</summary>
internal static class AliasRules
{
    public static void Check(Inspection inspection)
    {
        string[] ids =
        [
            .. inspection.Parts.Ids, .. inspection.Quantities.Ids, .. inspection.SetUps.Ids, .. inspection.Tools.Ids, .. inspection.Hands.Ids,
            .. inspection.Checks.Ids, .. inspection.Specs.Ids, .. inspection.Remedies.Ids, .. inspection.Complaints.Ids, .. inspection.CommonCauses.Ids, .. inspection.Intake.Ids,
            .. inspection.Cautions.Ids, .. inspection.Interlocks.Ids, .. inspection.Layouts.Ids,
        ];
        foreach (var (old, renamed) in inspection.Knowledge.Aliases)
        {
            var path = "/aliases".Member(old);
            if (ids.Contains(old))
            {
                inspection.Report(path, $"{old} is renamed, but is still in use", "ids are never reused: rename the record or take the line out");
            }

            if (inspection.Whole("parts", "quantities", "set-ups", "tools", "hands", "checks", "specs", "remedies", "complaints", "common-causes", "intake", "cautions", "interlocks", "layouts"))
            {
                inspection.OneOf("id", renamed, ids, path);
            }
        }
    }
}
