using Undercowl.Cli.Documents;
using Undercowl.Diagnosis;
using Undercowl.Diagnosis.Answers;
using Undercowl.Jobs;

namespace Undercowl.Cli;

/// <summary>
/// Ends a job, or says what stands in the way. Nothing ends while something disturbed is not put back; <c>proven</c> wants
/// the whole proof; every other ending records what stays open.
/// </summary>
internal static class Ending
{
    public static SignOffAnswer Of(JobAtHand job, JobOutcome outcome, string by)
    {
        var diagnosis = job.Diagnosis;
        var proof = diagnosis.Proof();
        RestoreAnswer[] restore = [.. diagnosis.Restore.Select(r => new RestoreAnswer(r.Key, r.What, r.How))];
        var text = Outcomes.Text(outcome);
        if (outcome == JobOutcome.Proven && !proof.Proven)
        {
            return new SignOffAnswer(1, false, text, proof.HealthyNow, proof.ErrorBound, proof.Missing, [], restore);
        }

        if (restore.Length > 0)
        {
            return new SignOffAnswer(1, false, text, proof.HealthyNow, proof.ErrorBound, [.. restore.Select(r => $"Still to undo: {r.What}. {r.How}")], [], restore);
        }

        IReadOnlyList<string> open = outcome == JobOutcome.Proven ? [] : proof.Missing;
        job.Record(outcome == JobOutcome.Proven ? [Claim(diagnosis), new SignOff(outcome, by, open)] : [new SignOff(outcome, by, open)]);
        return new SignOffAnswer(1, true, text, proof.HealthyNow, proof.ErrorBound, [], open, restore);
    }

    /// <summary>The proof names the last reading of each complaint's own test.</summary>
    private static Proof Claim(JobDiagnosis diagnosis)
    {
        var projection = diagnosis.Projection;
        var tests = projection.Complaints
            .Select(said => diagnosis.Knowledge.ComplaintOf(said.Id)!)
            .Select(c => projection.Findings.Last(f => diagnosis.Knowledge.Today(f.Body.Check) == c.SystemTest).Id)
            .Distinct();
        return new Proof([.. tests], "The complaint's own test read good after the last remedy, and it is likely to last.");
    }
}
