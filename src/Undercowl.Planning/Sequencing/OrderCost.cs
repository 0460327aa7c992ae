namespace Undercowl.Planning.Sequencing;

/// <summary>
/// The exact expected cost of following a given order of actions, with the best places for system tests and the best
/// place to refer found by dynamic programming from the end. Node i is "a test has just failed after i actions".
/// </summary>
internal sealed class OrderCost
{
    private readonly RepairModel model;
    private readonly double[] value;
    private readonly int[] blockEnd;
    private readonly double[] setUp;
    private readonly int[] mark;
    private int stamp;

    internal OrderCost(RepairModel model)
    {
        this.model = model;
        int actions = model.Problem.Actions.Cost.Length;
        value = new double[actions + 1];
        blockEnd = new int[actions + 1];
        setUp = new double[actions];
        mark = new int[model.Problem.Clusters.OpenCost.Length];
    }

    internal long Work { get; private set; }

    /// <summary>Cost of the cheapest way to begin, how it begins, and how many actions precede its first test.</summary>
    internal (double Cost, StepKind Begin, int FirstBlock) Best(RepairOrder order, bool[] open)
    {
        Prepare(order, open, untilStart: order.MetAtStart > 0);
        double weight = Weight(order);
        double best = model.Problem.ReferCost * weight;
        var begin = StepKind.Refer;
        if (order.MetAtStart > 0 && BareTest(order, open) is var test && test < best)
        {
            best = test;
            begin = StepKind.SystemTest;
        }

        (double block, int end) = Block(order, order.Done, weight, best, open);
        return end > order.Done ? (block, StepKind.Action, end - order.Done) : (best, begin, 0);
    }

    /// <summary>Cost when the order's first action comes first, and how many actions precede the first test.</summary>
    internal (double Cost, int FirstBlock) ActionFirst(RepairOrder order, bool[] open)
    {
        Prepare(order, open, untilStart: false);
        return Block(order, order.Done, Weight(order), double.PositiveInfinity, open);
    }

    /// <summary>Cost when a system test comes first.</summary>
    internal double TestFirst(RepairOrder order, bool[] open)
    {
        Prepare(order, open, untilStart: true);
        return BareTest(order, open);
    }

    /// <summary>What one system test costs now, with the closing it demands.</summary>
    internal double TestNow(bool[] open) => model.Problem.SystemTestCost + Closing(open);

    /// <summary>After node <paramref name="node"/>: where the next block of actions ends, or the node itself for refer.</summary>
    internal int NextTest(int node) => blockEnd[node];

    /// <summary>Set-up paid with the action at a place of the order, as last evaluated, where testing inside is possible.</summary>
    internal double SetUpAt(int place) => setUp[place];

    private double BareTest(RepairOrder order, bool[] open) => Weight(order) * TestNow(open) + value[order.Done];

    /// <summary>Weight with which the job goes on: what is done was tested, so that only what it left is there still.</summary>
    private static double Weight(RepairOrder order) => order.Done == 0 ? order.Total : order.LeftAfter[order.Done];

    private void Prepare(RepairOrder order, bool[] open, bool untilStart)
    {
        ClusterTable clusters = model.Problem.Clusters;
        stamp++;
        Array.Clear(setUp, order.Done, order.Count - order.Done);
        for (int i = order.Done; i < order.Count && mark.Length > 0; i++)
        {
            int g = model.ClusterOf[order.Actions[i]];
            if (g < 0 || !clusters.TestInside[g] || open[g] || mark[g] == stamp) continue;
            mark[g] = stamp;
            setUp[i] = clusters.OpenCost[g] + clusters.CloseCost[g];
        }

        double refer = model.Problem.ReferCost;
        int last = order.Count;
        value[last] = refer * order.LeftAfter[last];
        blockEnd[last] = last;
        for (int i = last - 1; i >= order.Done + (untilStart ? 0 : 1); i--)
        {
            (value[i], blockEnd[i]) = Block(order, i, order.LeftAfter[i], refer * order.LeftAfter[i], null);
        }
    }

    /// <summary>
    /// Cheapest block of actions from node i on that beats <paramref name="best"/>; ends at i when none does.
    /// <paramref name="open"/> says which clusters are open before the first test, and is null after a test.
    /// </summary>
    private (double Cost, int End) Block(RepairOrder order, int i, double weight, double best, bool[]? open)
    {
        ClusterTable clusters = model.Problem.Clusters;
        double[] cost = model.Problem.Actions.Cost, spent = order.RepairSpent, after = value, extra = setUp;
        int[] actions = order.Actions, clusterOf = model.ClusterOf;
        bool postpones = model.Postpones;
        double run = model.Problem.SystemTestCost + (open is null ? 0 : Closing(open));
        int end = i, count = order.Count, j = i;
        stamp++;
        while (j < count)
        {
            int a = actions[j];
            run += cost[a] + extra[j];
            int g = clusterOf[a];
            if (g >= 0 && !clusters.TestInside[g] && mark[g] != stamp)
            {
                mark[g] = stamp;
                if (open is null || !open[g]) run += clusters.OpenCost[g] + clusters.CloseCost[g];
            }

            j++;
            double reach = weight * run + (spent[j] - spent[i]);
            if (reach >= best) break;
            if (reach + after[j] < best)
            {
                best = reach + after[j];
                end = j;
            }

            if (!postpones) break;
        }

        Work += j - i;
        return (best, end);
    }

    private double Closing(bool[] open)
    {
        ClusterTable clusters = model.Problem.Clusters;
        double closing = 0;
        for (int g = 0; g < open.Length; g++)
        {
            if (open[g] && !clusters.TestInside[g]) closing += clusters.CloseCost[g];
        }

        return closing;
    }
}
