namespace Undercowl.Planning.Sequencing;

/// <summary>
/// Every step that is not a check, each followed by the best plan found without checks: refer, a system test, and each
/// useful action. Trying each action first mends the greedy order where actions overlap.
/// </summary>
internal sealed class Acting
{
    private readonly RepairModel model;
    private readonly RepairOrder order;
    private readonly OrderCost cost;
    private readonly double[] weights;
    private readonly bool[] open;
    private readonly Proposal?[] byAction;
    private readonly Proposal refer;
    private readonly Proposal[] decisions;
    private Proposal? systemTest;
    private double bestMerit;

    internal Acting(RepairModel model, RepairOrder order, OrderCost cost, double[] groupWeights)
    {
        this.model = model;
        this.order = order;
        this.cost = cost;
        weights = groupWeights;
        open = model.Problem.Clusters.IsOpen;
        byAction = new Proposal?[model.Problem.Actions.Cost.Length];

        double referCost = model.Problem.ReferCost;
        Best = new FoundPlan(PlanStep.Refer, [], referCost);
        refer = new Proposal(PlanStep.Refer, referCost, referCost, 0, 0, 0);
        order.Greedy(weights, open, -1);
        GreedyFirst = order.Count > 0 ? order.Actions[0] : -1;
        if (GreedyFirst >= 0) Offer();
        else OfferTest();
        decisions = new Proposal[model.Problem.Decisions.Count];
        for (int d = 0; d < decisions.Length; d++)
        {
            double total = model.Decided(d);
            decisions[d] = new Proposal(PlanStep.Decide(d), total, total, 0, 0, 0);
            Keep(PlanStep.Decide(d), total);
        }
    }

    internal FoundPlan Best { get; private set; }

    /// <summary>The action a greedy plan begins with, or -1.</summary>
    internal int GreedyFirst { get; }

    internal IEnumerable<Proposal> Proposals => byAction.Append(systemTest).Concat(decisions).Append(refer).OfType<Proposal>();

    internal void TryFirst(int action)
    {
        order.Greedy(weights, open, action);
        Offer();
    }

    /// <summary>Tries an order found elsewhere, so that no check looks better merely for having led to a better order.</summary>
    internal void TryOrder(ReadOnlySpan<int> actions)
    {
        if (actions.IsEmpty) return;
        order.Follow(weights, actions);
        Offer();
    }

    private void Offer()
    {
        OfferTest();
        int action = order.Actions[0];
        (double total, int firstBlock) = cost.ActionFirst(order, open);
        if (byAction[action] is { } known && known.ExpectedCostToFinish <= total) return;
        byAction[action] = new Proposal(
            PlanStep.Action(action),
            total,
            CostNow(action, firstBlock),
            Information: 0,
            model.ProbabilityOfHelp(action, weights),
            Math.Max(0, 1 - order.LeftAfter[1] / order.Total));
        Keep(PlanStep.Action(action), total);
    }

    // Every order is tried behind a test too: the best order found is seldom the greedy one where actions overlap, and a check
    // that tells nothing must not look good only because its plans may begin with a test that acting never tried.
    private void OfferTest()
    {
        if (!(order.MetAtStart > 0)) return;
        double total = cost.TestFirst(order, open);
        if (systemTest is { } known && known.ExpectedCostToFinish <= total) return;
        double passes = order.MetAtStart / order.Total;
        systemTest = new Proposal(PlanStep.SystemTest, total, cost.TestNow(open), 0, passes, passes);
        Keep(PlanStep.SystemTest, total);
    }

    private double CostNow(int action, int firstBlock)
    {
        ClusterTable clusters = model.Problem.Clusters;
        double now = model.Problem.Actions.Cost[action] + order.RepairSpent[1] + cost.SetUpAt(0);
        int g = model.ClusterOf[action];
        bool opens = g >= 0 && !clusters.TestInside[g] && !open[g];
        if (opens) now += clusters.OpenCost[g];
        if (firstBlock == 1) now += cost.TestNow(open) + (opens ? clusters.CloseCost[g] : 0);
        return now;
    }

    private void Keep(PlanStep begin, double total)
    {
        double merit = begin.Kind == StepKind.Action ? Ratios.Of(model.ProbabilityOfHelp(begin.Index, weights), model.Problem.Actions.Cost[begin.Index]) : 0;
        // Where one test follows several actions their order costs the same now, yet not once an answer changes the weights. The
        // tie goes to the better ratio, so that what a check is worth does not hang on how the actions are numbered.
        bool ties = Math.Abs(total - Best.Cost) <= 1e-12 * Math.Abs(Best.Cost);
        if (ties ? merit <= bestMerit * (1 + 1e-9) : total > Best.Cost) return;
        Best = new FoundPlan(begin, order.Actions[..order.Count], total);
        bestMerit = merit;
    }
}
