namespace Undercowl.Planning.Sequencing;

/// <summary>
/// Each check followed, for each of its outcomes, by the best plan found without checks. For every outcome the plan that
/// would be followed without the check is among the candidates, so looking never seems to do harm.
/// </summary>
internal sealed class Looking
{
    private readonly RepairModel model;
    private readonly Cells cells;
    private readonly RepairOrder order;
    private readonly OrderCost cost;
    private readonly FoundPlan acting;
    private readonly double[] groupWeights;
    private readonly double[] outcomeWeights;
    private readonly bool[] open;
    private readonly int[]?[] openOrders;
    private readonly double[] openCosts;
    private readonly double[] decided;
    private readonly Foresight? foresight;
    private double closedCost = double.NaN;

    internal Looking(
        RepairModel model, Cells cells, RepairOrder order, OrderCost cost, double[] groupWeights, FoundPlan acting, int[]?[] openOrders, Foresight? foresight)
    {
        (this.model, this.cells) = (model, cells);
        this.order = order;
        this.cost = cost;
        this.groupWeights = groupWeights;
        this.acting = acting;
        this.openOrders = openOrders;
        outcomeWeights = new double[model.Groups];
        open = (bool[])model.Problem.Clusters.IsOpen.Clone();
        openCosts = new double[open.Length];
        Array.Fill(openCosts, double.NaN);
        this.foresight = foresight;
        decided = new double[model.Problem.Decisions.Count];
    }

    internal long Work { get; private set; }

    internal Proposal Propose(int check)
    {
        ClusterTable clusters = model.Problem.Clusters;
        double now = model.Problem.Checks.Cost[check];
        int opens = ClusterOpenedBy(model.Problem, check);
        if (opens < 0) return Propose(check, now, null, ref closedCost);

        now += clusters.OpenCost[opens] + (clusters.TestInside[opens] ? clusters.CloseCost[opens] : 0);
        open[opens] = true;
        Proposal proposal = Propose(check, now, openOrders[opens], ref openCosts[opens]);
        open[opens] = false;
        return proposal;
    }

    /// <summary>The cluster that the check has to open, or -1.</summary>
    internal static int ClusterOpenedBy(TroubleshootingProblem problem, int check) =>
        problem.Checks.Cluster is { } cluster && cluster[check] is >= 0 and var g && !problem.Clusters.IsOpen[g] ? g : -1;

    private Proposal Propose(int check, double now, int[]? openOrder, ref double untold)
    {
        if (double.IsNaN(untold))
        {
            for (int d = 0; d < decided.Length; d++) decided[d] = model.Decided(d);
            untold = Foreseen(groupWeights, Known(groupWeights, 1, openOrder).Cost);
        }

        double told = 0, differs = 0;
        for (int o = 0; o < model.Problem.Checks.Outcomes[check]; o++)
        {
            double probability = Weigh(check, o, out bool tells);
            if (!(probability > 0)) continue;
            if (!tells)
            {
                told += probability * untold;
                continue;
            }

            (double known, PlanStep first) = Known(outcomeWeights, probability, openOrder);
            order.Greedy(outcomeWeights, open, -1);
            var fresh = cost.Best(order, open);
            if (fresh.Cost < known - 1e-12 * Math.Abs(known)) (known, first) = (fresh.Cost, First(fresh.Begin));
            told += Foreseen(outcomeWeights, known);
            if (first != acting.Begin) differs += probability;
        }

        double information = untold - told;
        if (information <= 1e-12 * Math.Abs(untold)) (information, told) = (0, untold);
        return new Proposal(PlanStep.Check(check), now + told, now, information, differs, ProbabilityOfCure: 0);
    }

    /// <summary>Group weights of hypothesis and outcome together; whether the outcome favours any hypothesis over another.</summary>
    private double Weigh(int check, int outcome, out bool tells)
    {
        double[] weight = cells.Weight, weights = outcomeWeights;
        int[] groupOf = cells.GroupOf;
        ReadOnlySpan<double> chance = cells.Chance[check].AsSpan(outcome * cells.Count, cells.Count);
        Array.Clear(weights);
        Array.Clear(decided);
        double probability = 0, lowest = double.PositiveInfinity, highest = 0;
        for (int i = 0; i < chance.Length; i++)
        {
            double likelihood = chance[i], joint = weight[i] * likelihood;
            weights[groupOf[i]] += joint;
            probability += joint;
            for (int d = 0; d < decided.Length; d++) decided[d] += joint * cells.Decide[d * cells.Count + i];
            if (likelihood < lowest) lowest = likelihood;
            if (likelihood > highest) highest = likelihood;
        }

        Work += model.Possible.Length;
        tells = highest - lowest > 1e-12 * highest;
        return probability;
    }

    private (double Cost, PlanStep First) Known(double[] weights, double probability, int[]? openOrder)
    {
        double best = model.Problem.ReferCost * probability;
        PlanStep first = PlanStep.Refer;
        for (int d = 0; d < decided.Length; d++)
        {
            if (decided[d] < best) (best, first) = (decided[d], PlanStep.Decide(d));
        }

        Try(acting.Actions);
        if (openOrder is not null) Try(openOrder);
        return (best, first);

        void Try(int[] actions)
        {
            order.Follow(weights, actions);
            var found = cost.Best(order, open);
            if (found.Cost < best - 1e-12 * Math.Abs(best)) (best, first) = (found.Cost, First(found.Begin));
        }
    }

    private double Foreseen(double[] weights, double acting) => foresight?.Cost(weights, acting) ?? acting;

    private PlanStep First(StepKind begin) => new(begin, begin == StepKind.Action ? order.Actions[0] : 0);
}
