using Undercowl.Diagnosis.Answers;

namespace Undercowl.Diagnosis.Working;

/// <summary>Which step is put now: the best proposal that was not left, what must be put back first, and at the end the sign-off.</summary>
public static class StepNow
{
    /// <param name="diagnosis">The job as it is.</param>
    /// <param name="next">Its proposals.</param>
    /// <param name="left">True for a step that the technician left for now.</param>
    /// <returns>Null when nothing is left to propose.</returns>
    public static ProposedStep? Of(JobDiagnosis diagnosis, NextAnswer next, Func<ProposedStep, bool> left)
    {
        ArgumentNullException.ThrowIfNull(diagnosis);
        ArgumentNullException.ThrowIfNull(next);
        ArgumentNullException.ThrowIfNull(left);
        if (Finish(diagnosis, next) is { } finish && !left(finish))
        {
            return finish;
        }

        var best = next.Proposals.FirstOrDefault(p => !left(p));
        var back = PutBack(next.Restore);
        return best?.Kind is "system-test" or "proof" or "refer" && next.Restore.Count > 0 && !left(back) ? back : best;
    }

    /// <summary>The last steps: put back what stands in the way of the proof, then sign.</summary>
    private static ProposedStep? Finish(JobDiagnosis diagnosis, NextAnswer next)
    {
        var tests = diagnosis.Knowledge.Complaints.Select(c => c.SystemTest).ToHashSet();
        if (!diagnosis.Projection.Findings.Any(f => tests.Contains(f.Body.Check)))
        {
            return null;
        }

        var proof = diagnosis.Proof();
        if (proof.Proven)
        {
            return Plain("sign-off", "Sign off as proven", "Who signs?", "the complaint's own test is good, nothing is left undone, and it is likely to last", 0, [], ["sign WHO"]);
        }

        return next.Restore.Count > 0 && proof.Missing.Count == next.Restore.Count ? PutBack(next.Restore) : null;
    }

    private static ProposedStep PutBack(IReadOnlyList<RestoreAnswer> items) => Plain(
        "restore", "Put back what was disturbed", "Is all of it back?", "the engine must be whole before its own test counts", null, [.. items.Select(r => $"{r.What}: {r.How}")], ["done"]);

    private static ProposedStep Plain(string kind, string name, string ask, string why, double? toFinish, IReadOnlyList<string> steps, IReadOnlyList<string> answers) => new(
        kind, "", "engine", null, name, ask, why, null, null, toFinish, new Dictionary<string, string>(), [], [], [], steps, answers, []);
}
