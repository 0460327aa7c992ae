using Undercowl.Diagnosis.Answers;
using Undercowl.Diagnosis.Working;
using Undercowl.Jobs;

namespace Undercowl.Cli;

/// <summary>Signs a job in its file, or says what stands in the way.</summary>
internal static class Ending
{
    public static SignOffAnswer Of(JobAtHand job, JobOutcome outcome, string by)
    {
        var (answer, bodies) = SigningOff.Of(job.Diagnosis, outcome, by);
        if (answer.Signed)
        {
            job.Record(bodies);
        }

        return answer;
    }
}
