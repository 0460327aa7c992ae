using Undercowl.Planning.Sequencing;

namespace Undercowl.Planning;

/// <summary>
/// Ranks the next steps of a troubleshooting problem by expected cost to finish, looking one check ahead or, with
/// <see cref="PlannerOptions.LookAhead"/>, on to the end of the job. It is a good plan and not always the best one: finding that is intractable.
/// </summary>
/// <remarks>Same problem, same answer; it keeps nothing from one problem to the next and may be used by several threads.</remarks>
public sealed class Planner(PlannerOptions? options = null)
{
    /// <summary>So many steps are looked into beyond the next check. Estimate.</summary>
    private const int MostUnfolded = 24;

    /// <summary>So many of them for what they tell for their cost, wherever the estimate puts them. Estimate.</summary>
    private const int MostToldOf = 8;

    private readonly PlannerOptions options = options ?? new PlannerOptions();

    /// <summary>The possible next steps, best first.</summary>
    public Ranking Rank(TroubleshootingProblem problem)
    {
        ArgumentNullException.ThrowIfNull(problem);
        var bench = new Bench(problem);
        var skipped = new List<PlanStep>();
        Acting acting = Act(bench, skipped);
        int[]?[] openOrders = OrdersWithClusterOpen(bench, acting);

        bool small = bench.Model.Possible.Length <= Coarse.Most && problem.Checks.Cost.Length + bench.Model.Useful.Length <= MostUnfolded;
        Foresight? foresight = options.LookAhead > 0 && !small ? new Foresight(bench.Model, bench.Cells, new Ends(bench.Model), bench.Weights, acting.Best.Cost) : null;
        var looking = new Looking(bench.Model, bench.Cells, bench.Order, bench.Cost, bench.Weights, acting.Best, openOrders, foresight);
        var proposals = new List<Proposal>(foresight is null ? acting.Proposals : acting.Proposals.Select(p => Foreseen(p, bench, foresight)));
        // Cheapest first: what a budget cuts off is then what one would least like to do on a hunch.
        double[] cost = problem.Checks.Cost;
        foreach (int k in Enumerable.Range(0, cost.Length).Where(k => Allowed(problem.Checks.Allowed, k)).OrderBy(k => cost[k]))
        {
            if (bench.Work + looking.Work > options.WorkBudget) skipped.Add(PlanStep.Check(k));
            else proposals.Add(looking.Propose(k));
        }

        long work = bench.Work + looking.Work;
        if (options.LookAhead > 0 && skipped.Count == 0) work += Unfold(bench.Model, proposals, estimated: !small);
        return new Ranking(proposals, skipped, acting.Best.Cost, work);
    }

    /// <summary>Prices the leading proposals by what looking on after them comes to, and shifts the others by as much; the work it took.</summary>
    private long Unfold(RepairModel model, List<Proposal> proposals, bool estimated)
    {
        Proposal[] ranked = [.. new Ranking([.. proposals], [], 0, 0).Proposals];
        int[] checks = [.. ranked.Where(p => p.Step.Kind == StepKind.Check).Select(p => p.Step.Index)];
        var unfolding = new Unfolding(Coarse.Of(model, checks), estimated);
        int leaders = Math.Min(ranked.Length, estimated ? MostUnfolded - MostToldOf : int.MaxValue);
        Proposal[] leading = ranked[..leaders];
        if (estimated)
        {
            // An estimate may think too little of a cheap question that only the whole of the job shows to pay.
            Proposal[] rest = ranked[leaders..];
            Proposal[] telling = [.. unfolding.MostTelling.Select(k => Array.Find(rest, p => p.Step == PlanStep.Check(k))).OfType<Proposal>().Take(MostToldOf)];
            leading = [.. leading, .. telling];
            ranked = [.. leading, .. rest.Except(telling)];
        }

        double[] values = unfolding.Values([.. leading.Select(p => p.Step)], options.LookAhead);
        proposals.Clear();
        if (estimated)
        {
            // Two estimates of the same that err in different ways; what was not unfolded is taken to differ as much as the rest.
            double differ = leading.Select((p, i) => values[i] - p.ExpectedCostToFinish).Where(double.IsFinite).DefaultIfEmpty(0).Average();
            proposals.AddRange(ranked.Select((p, i) => p with
            {
                ExpectedCostToFinish = IsTerminal(p.Step) ? p.ExpectedCostToFinish : p.ExpectedCostToFinish + (i < leading.Length ? values[i] - p.ExpectedCostToFinish : differ) / 3,
            }));
        }
        else
        {
            // What a plan costs that is laid out is a bound.
            proposals.AddRange(ranked.Select((p, i) => p with { ExpectedCostToFinish = Math.Min(values[i], p.ExpectedCostToFinish) }));
        }

        for (int i = 0; i < proposals.Count && proposals.Count > 1; i++)
        {
            if (proposals[i].Step.Kind != StepKind.Check) continue;
            double without = proposals.Where((_, j) => j != i).Min(p => p.ExpectedCostToFinish);
            double saves = without - (proposals[i].ExpectedCostToFinish - proposals[i].CostNow);
            proposals[i] = proposals[i] with { Information = saves > 1e-9 * Math.Abs(without) ? saves : 0 };
        }

        return unfolding.Work;
    }

    /// <summary>The step followed by going on looking, where that is cheaper than the plan without checks that it begins.</summary>
    private static Proposal Foreseen(Proposal proposal, Bench bench, Foresight foresight)
    {
        if (proposal.Step.Kind is not (StepKind.Action or StepKind.SystemTest)) return proposal;
        TroubleshootingProblem problem = bench.Model.Problem;
        bool acts = proposal.Step.Kind == StepKind.Action;
        double now = problem.SystemTestCost + (acts ? problem.Actions.Cost[proposal.Step.Index] : 0);
        var left = (double[])bench.Weights.Clone();
        for (int g = 0; g < left.Length; g++)
        {
            double mended = acts || bench.Model.Broken[g].IsEmpty ? 1 : 0;
            foreach (int c in bench.Model.Broken[g])
            {
                mended *= acts ? problem.Actions.Success[proposal.Step.Index * problem.Hypotheses.Components + c] : 0;
            }

            left[g] *= 1 - mended;
        }

        bench.Order.Greedy(left, problem.Clusters.IsOpen, acts ? proposal.Step.Index : -1);
        double acting = Math.Min(bench.Cost.Best(bench.Order, problem.Clusters.IsOpen).Cost, problem.ReferCost * left.Sum());
        return proposal with { ExpectedCostToFinish = Math.Min(proposal.ExpectedCostToFinish, now + foresight.Cost(left, acting)) };
    }

    /// <summary>The best plan found that asks no checks: what acting now comes to, step by step.</summary>
    public RepairPlan PlanRepairs(TroubleshootingProblem problem)
    {
        ArgumentNullException.ThrowIfNull(problem);
        var bench = new Bench(problem);
        FoundPlan best = Act(bench, []).Best;
        bench.Order.Follow(bench.Weights, best.Actions);
        return new RepairPlan(PlanSteps.Of(best, bench.Order, bench.Cost, problem.Clusters.IsOpen), best.Cost);
    }

    private Acting Act(Bench bench, List<PlanStep> skipped)
    {
        var acting = new Acting(bench.Model, bench.Order, bench.Cost, bench.Weights);
        foreach (int a in bench.Model.Useful)
        {
            if (a == acting.GreedyFirst) continue;
            if (bench.Work > options.WorkBudget) skipped.Add(PlanStep.Action(a));
            else acting.TryFirst(a);
        }

        return acting;
    }

    private int[]?[] OrdersWithClusterOpen(Bench bench, Acting acting)
    {
        TroubleshootingProblem problem = bench.Model.Problem;
        var orders = new int[]?[problem.Clusters.OpenCost.Length];
        // Past the budget no check will be ranked, and an action named as left out must not come back in by this door.
        if (bench.Work > options.WorkBudget) return orders;
        var open = (bool[])problem.Clusters.IsOpen.Clone();
        for (int k = 0; k < problem.Checks.Cost.Length; k++)
        {
            int g = Looking.ClusterOpenedBy(problem, k);
            if (g < 0 || orders[g] is not null || !Allowed(problem.Checks.Allowed, k)) continue;
            open[g] = true;
            bench.Order.Greedy(bench.Weights, open, -1);
            open[g] = false;
            orders[g] = bench.Order.Actions[..bench.Order.Count];
        }

        foreach (int[]? found in orders) acting.TryOrder(found);
        return orders;
    }

    private static bool IsTerminal(PlanStep step) => step.Kind is StepKind.Refer or StepKind.Decide;

    private static bool Allowed(bool[]? allowed, int index) => allowed is null || allowed[index];

    /// <summary>What is laid out once per problem, so that nothing is allocated per step.</summary>
    private sealed class Bench
    {
        internal Bench(TroubleshootingProblem problem)
        {
            Model = new RepairModel(problem);
            Order = new RepairOrder(Model);
            Cost = new OrderCost(Model);
            Weights = new double[Model.Groups];
            for (int i = 0; i < Model.Possible.Length; i++) Weights[Model.GroupOf[i]] += Model.Weight[i];
        }

        internal RepairModel Model { get; }

        internal RepairOrder Order { get; }

        internal OrderCost Cost { get; }

        internal Cells Cells => field ??= new Cells(Model);

        internal double[] Weights { get; }

        internal long Work => Order.Work + Cost.Work;
    }
}
