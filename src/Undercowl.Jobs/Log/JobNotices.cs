namespace Undercowl.Jobs;

/// <summary>What is odd about a job and does no harm.</summary>
internal static class JobNotices
{
    public static IReadOnlyList<JobProblem> Of(Job job, string source)
    {
        var notices = new List<JobProblem>();
        foreach (var (parent, child) in job.MissingParents)
        {
            notices.Add(new JobProblem(
                source, 0, $"Entry {child} follows {parent}, which this copy does not have.",
                "Merge with the copy it came from; until then the entry counts as one that follows nothing."));
        }

        var twice = job.Entries.GroupBy(entry => (entry.Device, entry.Sequence)).Where(group => group.Count() > 1);
        foreach (var group in twice)
        {
            notices.Add(new JobProblem(
                source, 0, $"The device \"{group.Key.Device}\" counted {group.Key.Sequence} more than once: two copies were written to under one device name.",
                "Nothing is lost; give each device a name of its own."));
        }

        return notices;
    }
}
