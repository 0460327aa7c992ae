namespace Undercowl.Knowledge.Checking;

/// <summary>Generic ranges.</summary>
internal static class SpecRules
{
    public static void Check(Inspection inspection)
    {
        for (var i = 0; i < inspection.Specs.All.Count; i++)
        {
            var spec = inspection.Specs.All[i];
            var path = inspection.Specs.Path(i);
            inspection.Source(spec.Source, path);
            if (spec.Low is null && spec.High is null)
            {
                inspection.Report(path, $"{spec.Item} has no bound", "give low, high or both");
            }

            if (spec.Low >= spec.High)
            {
                inspection.Report(path.Member("low"), FormattableString.Invariant($"low is {spec.Low} and high is {spec.High}"), "write the smaller one as low");
            }
        }
    }
}
