using Undercowl.Diagnosis;
using Undercowl.Diagnosis.Answers;

namespace Undercowl.Cli;

/// <summary>Which step is put next: the best proposal that was not skipped, what must be put back first, and at the end the sign-off.</summary>
internal sealed class WorkSteps
{
    private const int Considered = 40;
    private readonly HashSet<(string Kind, string Id, string Place, string? With)> _skipped = [];
    private ProposedStep? _chosen;

    /// <summary>The proposals that are open, best first, as of the last choice.</summary>
    public IReadOnlyList<ProposedStep> Open { get; private set; } = [];

    public string Currency { get; private set; } = "";

    public void Skip(ProposedStep step) => _skipped.Add(Key(step));

    /// <summary>Puts this one next.</summary>
    public void Choose(ProposedStep step) => _chosen = step;

    public ProposedStep? Next(JobDiagnosis diagnosis)
    {
        if (_chosen is { } chosen)
        {
            _chosen = null;
            return chosen;
        }

        var next = diagnosis.Next(Considered);
        (Open, Currency) = ([.. next.Proposals.Where(p => !_skipped.Contains(Key(p)))], next.Currency);
        if (Finish(diagnosis, next) is { } finish && !_skipped.Contains(Key(finish)))
        {
            return finish;
        }

        var best = Open.Count > 0 ? Open[0] : null;
        var back = PutBack(next.Restore);
        return best?.Kind is "system-test" or "proof" or "refer" && next.Restore.Count > 0 && !_skipped.Contains(Key(back)) ? back : best;
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

    private static (string Kind, string Id, string Place, string? With) Key(ProposedStep step) => (step.Kind, step.Id, step.Place, step.With);
}
