namespace Undercowl.Planning.Sequencing;

/// <summary>
/// An order of actions with what is left broken after each, for one set of group weights: made greedily by benefit per
/// cost, or followed as given. It decides neither where to test nor where to stop: <see cref="OrderCost"/> does.
/// </summary>
internal sealed class RepairOrder
{
    private readonly RepairModel model;
    private readonly RepairState state;
    private readonly double[] ratio;
    private readonly double[] benefit;
    private readonly bool[] taken;
    private readonly bool[] open;
    private readonly bool[] changed;
    private readonly int[] candidates;
    private readonly ClusterBlocks blocks;
    private int candidateCount;

    internal RepairOrder(RepairModel model)
    {
        this.model = model;
        state = new RepairState(model);
        int actions = model.Problem.Actions.Cost.Length;
        ratio = new double[actions];
        benefit = new double[actions];
        taken = new bool[actions];
        candidates = new int[actions];
        open = new bool[model.Problem.Clusters.OpenCost.Length];
        changed = new bool[model.Problem.Hypotheses.Components];
        blocks = new ClusterBlocks(model);
        Actions = new int[actions];
        LeftAfter = new double[actions + 1];
        RepairSpent = new double[actions + 1];
    }

    internal int Count { get; private set; }

    internal int[] Actions { get; }

    /// <summary>Weight not mended after the first i actions; at 0, before any.</summary>
    internal double[] LeftAfter { get; }

    /// <summary>Expected repair cost of the first i actions.</summary>
    internal double[] RepairSpent { get; }

    internal double Total => state.Total;

    internal double MetAtStart => state.MetAtStart;

    internal long Work => state.Work + scanned;

    private long scanned;

    internal void Follow(double[] groupWeights, ReadOnlySpan<int> actions)
    {
        Start(groupWeights, scoring: false);
        foreach (int a in actions) Append(a, null);
    }

    /// <summary>
    /// Highest benefit per cost next, updated after each action; ties go to the lower index. It begins with the action
    /// <paramref name="first"/> whatever its merit, unless that is -1.
    /// </summary>
    internal void Greedy(double[] groupWeights, bool[] openAtStart, int first)
    {
        Start(groupWeights, scoring: true);
        Array.Copy(openAtStart, open, open.Length);
        Array.Clear(taken);
        Array.Clear(changed);
        blocks.Forget();
        candidateCount = 0;
        foreach (int a in model.Useful)
        {
            Rate(a);
            if (benefit[a] > 0 && a != first) candidates[candidateCount++] = a;
        }

        scanned += model.Useful.Length;
        if (first >= 0)
        {
            // No test is assumed between a forced first action and its neighbours: the cluster it opened stays open for them.
            Take(first);
            if (model.ClusterOf(first) is >= 0 and var g) open[g] = true;
            Rerate();
        }

        double negligible = 1e-13 * state.Total;
        double slack = 2 * model.Problem.ReferCost * Math.Max(1, model.LargestGroup);
        while (state.Left > negligible)
        {
            (int next, double best) = Best();
            // Mending at a rate of at most `best` per cost cannot save more than referring all that is left costs.
            if (next == None || best * slack < state.Left) break;
            if (next >= 0) Take(next);
            else TakeCluster(~next);
            CloseForTest();
            Rerate();
        }
    }

    private const int None = int.MaxValue;

    /// <summary>The best action (0 or more), the best closed cluster (its complement), or none.</summary>
    private (int Next, double Ratio) Best()
    {
        int next = None;
        double best = 0;
        int kept = 0;
        for (int i = 0; i < candidateCount; i++)
        {
            int a = candidates[i];
            if (taken[a] || !(benefit[a] > 0)) continue;
            candidates[kept++] = a;
            if (Blocked(a)) continue;
            if (ratio[a] > best * (1 + Tie))
            {
                best = ratio[a];
                next = a;
            }
        }

        scanned += candidateCount;
        candidateCount = kept;
        for (int g = 0; g < open.Length; g++)
        {
            if (open[g] && model.Problem.Clusters.TestInside[g]) continue;
            double block = blocks.Ratio(g, open[g], benefit, taken);
            if (block > best * (1 + Tie))
            {
                best = block;
                next = ~g;
            }
        }

        return (next, best);
    }

    // Above rounding, so that the choice between equals follows the index and not the noise.
    private const double Tie = 1e-9;

    private bool Blocked(int action) =>
        model.ClusterOf(action) is >= 0 and var g && !(open[g] && model.Problem.Clusters.TestInside[g]);

    private void TakeCluster(int g)
    {
        ReadOnlySpan<int> members = blocks.Members(g, open[g], benefit, taken);
        if (model.Problem.Clusters.TestInside[g])
        {
            // Inside an open cluster the others compete singly again, in the same order and above all outside it.
            open[g] = true;
            Take(members[0]);
            return;
        }

        foreach (int a in members) Take(a);
    }

    private void CloseForTest()
    {
        for (int g = 0; g < open.Length; g++)
        {
            if (!open[g] || model.Problem.Clusters.TestInside[g]) continue;
            open[g] = false;
            blocks.Forget(g);
        }
    }

    private void Take(int action)
    {
        taken[action] = true;
        if (model.ClusterOf(action) is >= 0 and var g) blocks.Forget(g);
        Append(action, changed);
    }

    private void Rerate()
    {
        for (int c = 0; c < changed.Length; c++)
        {
            if (!changed[c]) continue;
            changed[c] = false;
            foreach (int a in model.MendedBy[c])
            {
                if (taken[a]) continue;
                Rate(a);
                scanned++;
                if (model.ClusterOf(a) is >= 0 and var g) blocks.Forget(g);
            }
        }
    }

    private void Rate(int action)
    {
        benefit[action] = state.Benefit(action);
        double cost = model.Problem.Actions.Cost[action] + model.Problem.SystemTestCost;
        ratio[action] = Ratios.Of(benefit[action], cost);
    }

    private void Start(double[] groupWeights, bool scoring)
    {
        state.Begin(groupWeights, scoring);
        Count = 0;
        LeftAfter[0] = state.Left;
        RepairSpent[0] = 0;
    }

    private void Append(int action, bool[]? marks)
    {
        double repair = model.Problem.Actions.RepairCost is { } cost ? cost[action] : 0;
        RepairSpent[Count + 1] = RepairSpent[Count] + (repair > 0 ? repair * state.FindsBroken(action) : 0);
        state.Apply(action, marks);
        Actions[Count++] = action;
        LeftAfter[Count] = state.Left;
    }
}
