using System.Text.Json;
using Undercowl.Diagnosis.Answers;
using Undercowl.Diagnosis.Beliefs;
using Undercowl.Diagnosis.Engine;
using Undercowl.Diagnosis.History;
using Undercowl.Diagnosis.Planning;
using Undercowl.Diagnosis.Safety;
using Undercowl.Diagnosis.Working;
using Undercowl.Jobs;
using Undercowl.Knowledge;

namespace Undercowl.Diagnosis;

/// <summary>
/// One job, diagnosed with today's knowledge: asks of it are answered from the same network and belief, each worked out
/// when first asked for. Made by the <see cref="Workbench"/>; not for use by several threads.
/// </summary>
public sealed class JobDiagnosis
{
    /// <summary>Proposals among which the technician's own order may choose.</summary>
    private const int Considered = 40;

    private const int Told = 12;

    private const double WorthTelling = 0.02;

    private const int LogTold = 12;

    private readonly JobNetwork _network;
    private readonly Workbench _workbench;
    private readonly bool _knowledgeChanged;
    private Belief? _belief;

    internal JobDiagnosis(Workbench workbench, Job job)
    {
        _workbench = workbench;
        Projection = Projection.Of(job);
        var opening = Projection.Opening
            ?? throw new DiagnosisException("The job has no opening entry.", "Start a job first.");
        var layout = JsonSerializer.Deserialize(Projection.Layout!.Text, KnowledgeJson.Default.EngineLayout)
            ?? throw new DiagnosisException("The job's layout is empty.", "Record a layout for it.");
        _knowledgeChanged = opening.Body.Knowledge != workbench.KnowledgeHash;
        _network = new JobNetwork(workbench.Model(layout), Projection);
        Standing = new StandingEngine(_network.Model, Projection, _network.Now);
        Interlocks = Safety.Interlocks.Of(workbench.Knowledge, Projection);
    }

    public Projection Projection { get; }

    public EngineLayout Layout => _network.Model.Layout;

    public KnowledgeBase Knowledge => _network.Model.Knowledge;

    public IReadOnlyList<InterlockStatus> Interlocks { get; }

    /// <summary>What must be undone before sign-off.</summary>
    public IReadOnlyList<RestoreItem> Restore => Standing.Restore;

    /// <summary>The value of a set-up key, <c>key</c> or <c>key@place</c>, where it is left other than usual; null otherwise.</summary>
    public string? Stands(string key) => Standing.Left.GetValueOrDefault(key);

    /// <summary>Findings of the log that say nothing today, and why.</summary>
    public IReadOnlyList<IdleFinding> WithoutEffect => _network.WithoutEffect;

    internal JobNetwork Network => _network;

    internal StandingEngine Standing { get; }

    internal Belief Belief => _belief ??= Belief.Of(_network);

    public BeliefAnswer BeliefNow()
    {
        var together = Belief.Explanations();
        var conflict = Disagreement.Of(Belief.Network);
        var posterior = Belief.Posterior;
        return new BeliefAnswer(
            1,
            posterior.Approximate,
            posterior.ErrorBound,
            _knowledgeChanged,
            Belief.Causes(),
            together.Found,
            together.Coverage,
            together.Considered,
            Belief.CommonCauses(),
            conflict,
            [.. _network.WithoutEffect.Select(f => $"{f.Check} at {f.Place} ({f.Id}): {f.Why}")],
            [.. together.LeftOut is { } why ? (string[])[why] : [], .. conflict is null ? (string[])["Whether the findings go together is not worked out: the sums do not fit."] : []]);
    }

    /// <summary>The next steps, best first.</summary>
    public NextAnswer Next(int top)
    {
        var complaint = Complaint();
        var shown = new Steadiness(_workbench).Before(this);
        var answer = new NextSteps(Belief.Network, Belief, Standing, Interlocks, complaint).Answer(top, shown);
        if (answer.Proposals.Count > 0)
        {
            // Remembered for the job that goes on from here.
            _workbench.First(Projection.Job, shown, () => NextSteps.Named(answer.Proposals[0]));
        }

        return answer;
    }

    /// <summary>All that a screen shows while the job is worked.</summary>
    /// <param name="top">How many proposals are told.</param>
    /// <param name="left">True for a step that the technician left for now; it is not among the proposals.</param>
    public JobAnswer Answer(int top, Func<ProposedStep, bool> left)
    {
        var next = Next(Considered);
        var now = StepNow.Of(this, next, left);
        var causes = Belief.Causes();
        return new JobAnswer(
            1,
            _workbench.KnowledgeHash,
            Projection.Job.Count,
            Complaint().Name,
            now,
            next with { Proposals = [.. next.Proposals.Where(p => !left(p)).Take(top)] },
            [.. causes.Where((c, i) => i < Told || c.AsFound >= WorthTelling)],
            Belief.Posterior.Approximate,
            Belief.Posterior.ErrorBound,
            _knowledgeChanged,
            EngineShown.Of(this, Belief),
            Reporting.Last(this, LogTold),
            Projection.Ending is { } ended ? Outcomes.Text(ended.Body.Outcome) : "open");
    }

    /// <summary>The step that comes first, where these were shown before.</summary>
    internal StepName First(Shown shown) => _workbench.First(Projection.Job, shown, () => NextSteps.Named(new NextSteps(Belief.Network, Belief, Standing, Interlocks, Complaint()).Answer(1, shown).Proposals[0]));

    /// <summary>Why a cause is believed as it is. The id is matched by its near names when it is not known.</summary>
    public WhyAnswer Why(string cause)
    {
        var (aspect, state) = Cause(cause);
        return Reasons.For(Belief.Network, aspect, state);
    }

    /// <summary>Every number that touched the belief in a cause.</summary>
    public AuditAnswer Audit(string cause)
    {
        var (aspect, state) = Cause(cause);
        return Beliefs.Audit.Of(Belief.Network, Belief, aspect, state);
    }

    private (AspectInstance Aspect, int State) Cause(string cause)
    {
        var ids = new List<string>();
        foreach (var aspect in _network.Model.Aspects)
        {
            for (var s = 1; s < aspect.StateNames.Length; s++)
            {
                if (aspect.CauseId(s) == cause)
                {
                    return (aspect, s);
                }

                ids.Add(aspect.CauseId(s));
            }
        }

        throw new DiagnosisException($"There is no cause \"{cause}\" in this layout.", Near.Mend(cause, ids));
    }

    public ProofAnswer Proof() => ProofOf.Of(_network, ProofOf.Carrying(_network), Standing, Interlocks);

    public ReportAnswer Report()
    {
        var belief = ProofOf.Carrying(_network);
        return Reporting.Of(this, belief, ProofOf.Of(_network, belief, Standing, Interlocks), _knowledgeChanged);
    }

    /// <summary>The compiled network with its evidence, for any general tool: <c>xmlbif</c> or <c>uai</c> (evidence apart).</summary>
    public NetworkText Export(string format) => NetworkText.Of(_network, format);

    internal Knowledge.Complaint Complaint() => Projection.Complaints
        .Select(said => Knowledge.ComplaintOf(said.Id))
        .FirstOrDefault(c => c is not null)
        ?? throw new DiagnosisException("None of the job's complaints is known today.", $"Use one of: {string.Join(", ", Knowledge.Complaints.Select(c => c.Id))}.");
}
