using Undercowl.Planning;

namespace Undercowl.Diagnosis.Planning;

/// <summary>
/// The trade's own order where costs hardly differ: the looks that it makes before anything come before the first tool is taken in hand, and a tool is
/// proven before what it read is believed. A look cannot cost more than itself and the best plan, so that this spends a minute or two at most.
/// </summary>
/// <param name="network">The job.</param>
/// <param name="run">The drawn engines.</param>
/// <param name="repairs">What must be mended in each.</param>
internal sealed class FirstThings(JobNetwork network, ForwardRun run, Repairs repairs)
{
    /// <summary>The proof of a tool comes at this place at the latest, so that what it would be read with next stands before it. Common practice, no source.</summary>
    private const int ProofOfTool = 2;

    /// <param name="ordered">All steps, best first.</param>
    /// <param name="checks">By check step.</param>
    /// <param name="after">So many of the first keep their places.</param>
    public List<Proposal> Order(List<Proposal> ordered, List<Candidate> checks, int after)
    {
        var least = ordered.Count == 0 ? 0 : ordered.Min(p => p.ExpectedCostToFinish);
        var worth = ordered.Skip(after).Where(p => p.Step.Kind == StepKind.Check && checks[p.Step.Index].Check.FirstBy is not null)
            .Select(p => (Step: p, Of: checks[p.Step.Index], Amiss: Amiss(checks[p.Step.Index])))
            // Pays for itself: what is found here would otherwise be found at the price of all that is still to be spent.
            .Where(f => f.Amiss * least >= f.Step.CostNow)
            .OrderByDescending(f => f.Amiss / f.Step.CostNow).ThenBy(f => f.Step.Step.Index).ToArray();
        var looks = Measured ? [] : worth.Where(f => f.Of.Check.Likelihood.Aspect is not null).Select(f => f.Step).DistinctBy(p => checks[p.Step.Index].Check.Id).ToArray();
        var proofs = worth.Where(f => f.Of.Check.Likelihood.Tool is { } tool && Doubtful(tool, f.Of, f.Amiss)).Select(f => f.Step).ToArray();
        if (looks is [var first, ..] && ordered[after].CostNow >= first.CostNow)
        {
            Move(first, after);
        }

        if (looks is [_, var second, ..])
        {
            Move(second, after + ProofOfTool);
        }

        if (proofs is [var proof, ..])
        {
            Move(proof, after + ProofOfTool);
        }

        return ordered;

        // To that place, unless it stands before it. A check at several places is shown once and counts once.
        void Move(Proposal step, int place)
        {
            var shown = new HashSet<(StepKind, string)>();
            var at = ordered.FindIndex(p => shown.Add(Name(p)) && shown.Count > place);
            if (at >= 0 && ordered.IndexOf(step) > at)
            {
                ordered.Remove(step);
                ordered.Insert(at, step with { ExpectedCostToFinish = Math.Min(step.ExpectedCostToFinish, least + step.CostNow) });
            }
        }

        (StepKind, string) Name(Proposal p) => (p.Step.Kind, p.Step.Kind == StepKind.Check ? checks[p.Step.Index].Check.Id : $"{p.Step.Index}");
    }

    /// <summary>True once a tool was used that not everybody has in hand: the first looks come before that, and after it have no claim of their own.</summary>
    private bool Measured => network.Laid.Any(l => l.Check.Tools.Any(id => !network.Model.Knowledge.Tools.First(t => t.Id == id).Usual));

    /// <summary>Share of the drawn engines in which what the check looks at is amiss: must be mended, or, of a tool, misleads.</summary>
    private double Amiss(Candidate check)
    {
        run.Extend();
        var amiss = 0;
        for (var d = 0; d < run.Count; d++)
        {
            amiss += run.Level(d, check.Signal) != 0 && (check.Check.Likelihood.Tool is not null || Array.Exists(repairs.Needed[d], c => IsReadBy(check, c))) ? 1 : 0;
        }

        return (double)amiss / run.Count;
    }

    private bool IsReadBy(Candidate check, int component) =>
        component != Repairs.NotHere && repairs[component].Aspect is var aspect && aspect.Part.Place == check.Place && $"{aspect.Part.Kind.Id}.{aspect.Aspect.Id}" == check.Check.Likelihood.Aspect;

    /// <summary>True where the tool was used and what it read makes it likelier to mislead than before.</summary>
    private bool Doubtful(string tool, Candidate proof, double amiss) =>
        network.Laid.Any(l => l.Tool >= 0 && l.Tool == proof.Signal.Node)
        && network.Model.Knowledge.Tools.First(t => tool.StartsWith(t.Id + ".", StringComparison.Ordinal)).Aspects[0].Conditions.Sum(c => c.Prior) < amiss;
}
