using Undercowl.Diagnosis.Answers;
using Undercowl.Jobs;

namespace Undercowl.Diagnosis.Working;

/// <summary>
/// Ends a job, or says what stands in the way. Nothing ends while something disturbed is not put back; <c>proven</c> wants
/// the whole proof; every other ending records what stays open.
/// </summary>
public static class SigningOff
{
    /// <param name="diagnosis">The job as it is.</param>
    /// <param name="outcome">How it is to end.</param>
    /// <param name="by">Who signs.</param>
    /// <returns>What is said, and the entries to be recorded; none when it is not signed.</returns>
    public static (SignOffAnswer Answer, IReadOnlyList<EntryBody> Bodies) Of(JobDiagnosis diagnosis, JobOutcome outcome, string by)
    {
        ArgumentNullException.ThrowIfNull(diagnosis);
        var proof = diagnosis.Proof();
        RestoreAnswer[] restore = [.. diagnosis.Restore.Select(r => new RestoreAnswer(r.Key, r.What, r.How))];
        var text = Outcomes.Text(outcome);
        if (outcome == JobOutcome.Proven && !proof.Proven)
        {
            return (new SignOffAnswer(1, false, text, proof.HealthyNow, proof.ErrorBound, proof.Missing, [], restore), []);
        }

        if (restore.Length > 0)
        {
            return (new SignOffAnswer(1, false, text, proof.HealthyNow, proof.ErrorBound, [.. restore.Select(r => $"Still to undo: {r.What}. {r.How}")], [], restore), []);
        }

        IReadOnlyList<string> open = outcome == JobOutcome.Proven ? [] : proof.Missing;
        var signed = new SignOff(outcome, by, open);
        return (
            new SignOffAnswer(1, true, text, proof.HealthyNow, proof.ErrorBound, [], open, restore),
            outcome == JobOutcome.Proven ? [Claim(diagnosis), signed] : [signed]);
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
