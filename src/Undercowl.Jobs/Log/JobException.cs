namespace Undercowl.Jobs;

/// <summary>
/// The one error of this project: an input or a file that cannot be taken as it is. It is not thrown for
/// what a reader is expected to meet (see <see cref="Job.Parse"/>, which lists problems instead).
/// </summary>
public class JobException : Exception
{
    public JobException(JobProblem problem, Exception? inner = null)
        : base(problem.ToString(), inner) => Problem = problem;

    public JobException(string what, string mend, Exception? inner = null)
        : this(new JobProblem("", 0, what, mend), inner)
    {
    }

    /// <summary>What is wrong, where, and how to mend it.</summary>
    public JobProblem Problem { get; }
}
