namespace Undercowl.Jobs;

/// <summary>What came of reading a job.</summary>
/// <param name="Job">The entries that could be read.</param>
/// <param name="Problems">The lines that could not, and why. While there is one, the job is not whole and must not be written back.</param>
/// <param name="Notices">What is worth saying and does no harm: entries whose parents are missing, a count used twice.</param>
/// <param name="TornAt">Where an unfinished last line begins, in bytes from the start; null when there is none. It is not among the problems.</param>
/// <param name="LacksFinalNewline">True when the last line is a whole entry and only its line feed is missing.</param>
public sealed record JobReading(
    Job Job, IReadOnlyList<JobProblem> Problems, IReadOnlyList<JobProblem> Notices, int? TornAt, bool LacksFinalNewline)
{
    /// <summary>The job, or a <see cref="JobException"/> with the first problem.</summary>
    public Job Whole() => Problems.Count == 0 ? Job : throw new JobException(Problems[0]);
}
