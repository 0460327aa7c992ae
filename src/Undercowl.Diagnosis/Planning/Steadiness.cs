using Undercowl.Diagnosis.Answers;
using Undercowl.Diagnosis.Engine;
using Undercowl.Jobs;

namespace Undercowl.Diagnosis.Planning;

/// <summary>
/// Advice does not hop about on what is worth little. Where the job ends in doubtful readings (looks, colours, numbers against a generic range: those with a
/// cap on what they may weigh) the step that came first before them stays first, unless another saves more than a margin, or is at a place where they
/// show something amiss; and what was left is not come back to before something firmer is known. To take a doubtful reading back is as little as to make one.
/// </summary>
internal sealed class Steadiness(Workbench bench)
{
    /// <summary>Another step comes first only where this one costs more than so many times as much to finish. Estimate: what draws and doubtful numbers cannot tell.</summary>
    private const double Margin = 1.06;

    /// <summary>Of a longer run of doubtful readings the last so many are followed one by one.</summary>
    private const int Longest = 6;

    /// <summary>What had been proposed first when the job ended where it does, and before that in the same run; nothing where it ends in something firm.</summary>
    public Shown Before(JobDiagnosis diagnosis)
    {
        var run = Run(diagnosis.Projection);
        if (run.Count == 0)
        {
            return Shown.Nothing;
        }

        var shown = Shown.Nothing;
        for (var count = Math.Max(0, run.Count - Longest); count < run.Count; count++)
        {
            var left = run.Skip(count).ToHashSet();
            var until = bench.Open(Job.Of(diagnosis.Projection.Job.Entries.Where(e => !left.Contains(e.Id))));
            shown = shown with { Places = Places(until, run.Take(count)) };
            shown = shown.Then(until.First(shown));
        }

        return shown with { Places = Places(diagnosis, run) };
    }

    /// <summary>True when this costs so little more than the best that it stays.</summary>
    public static bool Stays(double cost, double best) => cost <= best * Margin;

    /// <summary>The findings at the end of the log that are doubtful, and what takes such back, in order; what is no evidence may stand between them.</summary>
    private List<EntryId> Run(Projection projection)
    {
        var entries = projection.Job.Entries;
        var run = new List<EntryId>();
        foreach (var entry in entries.Reverse())
        {
            switch (entry.Body)
            {
                case Finding finding when IsDoubtful(finding):
                case Withdrawn { Entry: var back } when entries.FirstOrDefault(e => e.Id == back)?.Body is Finding taken && IsDoubtful(taken):
                    run.Add(entry.Id);
                    break;
                case Note or Photo or CautionAcknowledged or SetUpChange or Cranked or Occasion { Handled: not null }:
                    break;
                default:
                    run.Reverse();
                    return run;
            }
        }

        run.Reverse();
        return run;
    }

    private string[] Places(JobDiagnosis diagnosis, IEnumerable<EntryId> run) => [.. run.Select(id => PointsTo(diagnosis, id)).OfType<string>().Distinct()];

    /// <summary>Where something was seen that is not what one sees most where all is well; null where it was, for numbers, and for what was taken back.</summary>
    private string? PointsTo(JobDiagnosis diagnosis, EntryId id)
    {
        if (diagnosis.Projection.Findings.FirstOrDefault(f => f.Id == id)?.Body is not { Value: ChoiceReading choice } finding || bench.Knowledge.CheckOf(finding.Check) is not { Likelihood: var likelihood })
        {
            return null;
        }

        var well = likelihood.Quantity is { } quantity ? diagnosis.Network.Model.Quantity(quantity).Levels[0] : AspectInstance.Sound;
        return likelihood.Given.GetValueOrDefault(well)?.MaxBy(c => c.Value).Key == choice.Choice ? null : finding.Place.Text;
    }

    private bool IsDoubtful(Finding finding) => bench.Knowledge.CheckOf(finding.Check) is { } check && finding.Value switch
    {
        NumberReading => check.Caps.Count > 0,
        ChoiceReading choice => check.Caps.Any(c => c.Readings.Count == 0 || c.Readings.Contains(choice.Choice)),
        _ => false,
    };
}

/// <summary>What was proposed first along a run of doubtful readings.</summary>
/// <param name="Step">Last; null where nothing was.</param>
/// <param name="Left">Steps that were first and gave way.</param>
/// <param name="Places">Where the doubtful readings showed something amiss.</param>
internal sealed record Shown(StepName? Step, IReadOnlyList<StepName> Left, IReadOnlyList<string> Places)
{
    public static Shown Nothing { get; } = new(null, [], []);

    public Shown Then(StepName step) => step == Step ? this : new Shown(step, Step is { } gone ? [.. Left, gone] : Left, Places);
}
