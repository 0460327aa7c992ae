namespace Undercowl.Knowledge.Checking;

/// <summary>Checks: where, in which set-up, with what, and the form of the reading.</summary>
internal static class CheckRules
{
    private static readonly string[] Everywhere = ["engine", "cyl"];

    public static void Check(Inspection inspection)
    {
        inspection.Ids("check", inspection.Checks.All.Select(c => c.Id), "/checks");
        for (var i = 0; i < inspection.Checks.All.Count; i++)
        {
            var check = inspection.Checks.All[i];
            var path = inspection.Checks.Path(i);
            inspection.Source(check.Source, path);
            if (check.FirstBy is { } practice)
            {
                inspection.Source(practice, path, "first-by");
            }

            inspection.AtLeast(1, check.Revision, path.Member("revision"));
            inspection.AtLeast(0, check.Minutes, path.Member("minutes"));
            Again(inspection, check, path.Member("again"));
            if (!Everywhere.Contains(check.At))
            {
                inspection.Find(inspection.Parts with { Word = "place engine or cyl and no part kind" }, check.At, path.Member("at"));
            }

            SetUpRules.BroughtAbout(inspection, check.SetUp, path.Member("set-up"));
            inspection.CautionsExist(check.Cautions, path);
            inspection.HazardsCarried(check.Cautions, check.Hazards, path);
            for (var j = 0; j < check.Tools.Count; j++)
            {
                inspection.Find(inspection.Tools, check.Tools[j], path.Member("tools").Entry(j));
            }

            for (var j = 0; j < check.Handles.Count; j++)
            {
                inspection.Find(inspection.Parts, check.Handles[j], path.Member("handles").Entry(j));
            }

            if (check.Swap is { } swap && inspection.Find(inspection.Parts, swap, path.Member("swap")) is { Swappable: false })
            {
                inspection.Report(path.Member("swap"), $"{swap} is not swappable", "name a part kind that is, or write swappable: true there");
            }

            Settings(inspection, check, path.Member("settings"));
            Reading(inspection, check, path);
            LikelihoodRules.Check(inspection, check, path.Member("likelihood"));
            CapRules.Check(inspection, check, path.Member("caps"));
        }
    }

    private static void Again(Inspection inspection, Check check, string path)
    {
        if (check.Again is not { } again)
        {
            return;
        }

        inspection.AtLeast(0, again, path);
        if (check.Cluster is null || again > check.Minutes)
        {
            inspection.Report(path, check.Cluster is null ? "nothing shares the preparation of a check without a cluster" : "with the preparation shared it would take longer", "name a cluster and minutes that are no more than all of them, or take it out");
        }
    }

    private static void Settings(Inspection inspection, Check check, string path)
    {
        inspection.Ids("setting", check.Settings.Select(s => s.Id), path);
        for (var i = 0; i < check.Settings.Count; i++)
        {
            var (setting, at) = (check.Settings[i], path.Entry(i));
            var defaults = at.Member("defaults");
            if (inspection.SetUps[setting.Id] is not null)
            {
                inspection.Report(at.Member("id"), $"{setting.Id} is a set-up key too", "give the setting another id: both stand in a finding's set-up");
            }

            SourceRules.Parameters(inspection, setting.Defaults, defaults);
            for (var j = 0; j < setting.Defaults.Count; j++)
            {
                if (setting.Defaults[j].Unit != setting.Unit)
                {
                    inspection.Report(defaults.Entry(j).Member("unit"), $"the default is in {setting.Defaults[j].Unit}, the setting in {setting.Unit}", $"write both in {setting.Unit}");
                }
            }

            if (inspection.Layouts.All.FirstOrDefault(l => check.Only.Holds(l) && !setting.Defaults.Any(d => d.Only.Holds(l))) is { } lacking)
            {
                inspection.Report(defaults, $"no default holds for the layout {lacking.Id}", "add one that does, or one without only at the end");
            }
        }
    }

    private static void Reading(Inspection inspection, Check check, string path)
    {
        string[] choices = [.. check.Choices.Select(c => c.Id)];
        inspection.Ids("choice", choices, path.Member("choices"));
        if (check.Choices.Count > 0 == check.Number is not null)
        {
            inspection.Report(path, check.Number is null ? $"{check.Id} has no reading" : "a reading is a choice or a number", "write either choices or number");
        }

        if (check.Choices.Count == 1)
        {
            inspection.Report(path.Member("choices"), "one choice tells nothing", "list two or more");
        }

        if (check.Count is { } count)
        {
            var at = path.Member("count");
            inspection.OneOf("choice", count.None, choices, at.Member("none"));
            inspection.OneOf("choice", count.Some, choices, at.Member("some"));
            inspection.OneOf("choice", count.All, choices, at.Member("all"));
        }

        if (check.Number is { } number)
        {
            inspection.Source(number.Source, path.Member("number"));
            if (number.Low >= number.High)
            {
                inspection.Report(path.Member("number").Member("low"), FormattableString.Invariant($"low is {number.Low} and high is {number.High}"), "write the smaller one as low");
            }
        }
    }
}
