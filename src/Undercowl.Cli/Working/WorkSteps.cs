using Undercowl.Diagnosis;
using Undercowl.Diagnosis.Answers;
using Undercowl.Diagnosis.Working;

namespace Undercowl.Cli;

/// <summary>The steps of a job worked in the terminal: which are left for now, and one that was chosen out of turn.</summary>
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
        return StepNow.Of(diagnosis, next, step => _skipped.Contains(Key(step)));
    }

    private static (string Kind, string Id, string Place, string? With) Key(ProposedStep step) => (step.Kind, step.Id, step.Place, step.With);
}
