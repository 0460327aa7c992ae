namespace Undercowl.Planning;

/// <summary>
/// The possible next steps, best first. Costs equal but for rounding are ordered by kind (action, system test, decision,
/// check, refer, and last a check that tells nothing) and then by index, so a ranking does not depend on the noise of the arithmetic.
/// </summary>
public sealed class Ranking
{
    // Far above the rounding of a few hundred additions, far below any difference that could matter to a person.
    private const double TieTolerance = 1e-10;

    internal Ranking(List<Proposal> proposals, List<PlanStep> notConsidered, double expectedCostOfActing, long work)
    {
        Order(proposals);
        Proposals = proposals;
        NotConsidered = notConsidered;
        ExpectedCostOfActing = expectedCostOfActing;
        Work = work;
    }

    /// <summary>
    /// Never empty: refer is always among them. Left out are what is not allowed, an action that could mend nothing, and a
    /// system test that could not pass.
    /// </summary>
    public IReadOnlyList<Proposal> Proposals { get; }

    /// <summary>The cheapest proposal.</summary>
    public Proposal First => Proposals[0];

    /// <summary>Expected cost of the best plan found that asks no checks.</summary>
    public double ExpectedCostOfActing { get; }

    /// <summary>Steps left unranked because the work budget ran out; empty when the ranking is complete.</summary>
    public IReadOnlyList<PlanStep> NotConsidered { get; }

    /// <summary>Numbers touched, in units that are the same on every machine.</summary>
    public long Work { get; }

    /// <summary>
    /// The proposal to show first to someone who has been shown <paramref name="previous"/>: that one again, unless it
    /// is no longer among the proposals or another is cheaper by more than <paramref name="margin"/>.
    /// </summary>
    /// <param name="previous">The step shown so far; null when none was.</param>
    /// <param name="margin">In the unit of the costs; 0 or more. 0 keeps the previous step only when it ties.</param>
    /// <exception cref="PlanningException">The margin is negative or NaN.</exception>
    public Proposal Steady(PlanStep? previous, double margin)
    {
        if (!(margin >= 0)) throw new PlanningException("margin", null, "is below 0 or not a number", "give a cost of 0 or more");
        if (previous is not { } step) return First;
        double limit = First.ExpectedCostToFinish + margin;
        limit += TieTolerance * Math.Abs(limit);
        foreach (Proposal proposal in Proposals)
        {
            if (proposal.Step == step && proposal.ExpectedCostToFinish <= limit) return proposal;
        }

        return First;
    }

    private static void Order(List<Proposal> proposals)
    {
        proposals.Sort((a, b) => a.ExpectedCostToFinish.CompareTo(b.ExpectedCostToFinish));
        int start = 0;
        for (int i = 1; i <= proposals.Count; i++)
        {
            // A run ends where the next cost differs by more than rounding from its neighbour; within a run, order by step.
            if (i < proposals.Count && Ties(proposals[i - 1].ExpectedCostToFinish, proposals[i].ExpectedCostToFinish)) continue;
            proposals.Sort(start, i - start, ByStep.Instance);
            start = i;
        }
    }

    private static bool Ties(double a, double b) => b - a <= TieTolerance * Math.Max(Math.Abs(a), Math.Abs(b));

    private sealed class ByStep : IComparer<Proposal>
    {
        internal static readonly ByStep Instance = new();

        public int Compare(Proposal? x, Proposal? y)
        {
            int idle = IsIdle(x!).CompareTo(IsIdle(y!));
            if (idle != 0) return idle;
            int kind = x!.Step.Kind.CompareTo(y!.Step.Kind);
            return kind != 0 ? kind : x.Step.Index.CompareTo(y.Step.Index);
        }

        private static bool IsIdle(Proposal proposal) => proposal.Step.Kind == StepKind.Check && proposal.Information == 0;
    }
}
