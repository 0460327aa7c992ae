namespace Undercowl.Planning.Sequencing;

/// <summary>
/// An order of actions with what is left broken after each, for one set of group weights: made greedily by benefit per
/// cost, or followed as given. It decides neither where to test nor where to stop: <see cref="OrderCost"/> does.
/// </summary>
internal sealed class RepairOrder
{
    private const int None = int.MaxValue;

    // Above rounding, so that the choice between equals follows the index and not the noise.
    private const double Tie = 1e-9;

    private readonly RepairModel model;
    private readonly RepairState state;
    private readonly ClusterBlocks blocks;
    private readonly int[] clusterOf;
    private readonly bool[] testInside;
    private readonly double[] cost;
    private readonly double[]? repairCost;
    private readonly double[] benefit;
    private readonly bool[] taken;
    private readonly bool[] open;

    // Benefit per cost of each action that may be next, by place in model.Useful; 0 for one taken, useless, or behind a cover.
    private readonly double[] score;
    private readonly int[] placeOf;

    // Places whose score may be above 0, ascending. Without clusters what has come to 0 stays there.
    private readonly int[] live;
    private int liveCount;
    private long scanned;

    internal RepairOrder(RepairModel model)
    {
        this.model = model;
        state = new RepairState(model);
        blocks = new ClusterBlocks(model);
        clusterOf = model.ClusterOf;
        testInside = model.Problem.Clusters.TestInside;
        cost = model.Problem.Actions.Cost;
        repairCost = model.Problem.Actions.RepairCost;
        benefit = new double[cost.Length];
        taken = new bool[cost.Length];
        open = new bool[testInside.Length];
        score = new double[model.Useful.Length];
        placeOf = new int[cost.Length];
        live = new int[model.Useful.Length];
        for (int i = 0; i < score.Length; i++) placeOf[model.Useful[i]] = i;
        Actions = new int[cost.Length];
        LeftAfter = new double[cost.Length + 1];
        RepairSpent = new double[cost.Length + 1];
    }

    internal int Count { get; private set; }

    /// <summary>So many of the actions were done before; the rest is planned.</summary>
    internal int Done { get; private set; }

    internal int[] Actions { get; }

    /// <summary>Weight not mended after the first i actions; at 0, before any.</summary>
    internal double[] LeftAfter { get; }

    /// <summary>Expected repair cost of the first i actions.</summary>
    internal double[] RepairSpent { get; }

    internal double Total => state.Total;

    internal double MetAtStart => state.MetAtStart;

    internal long Work => state.Work + scanned;

    /// <summary>Takes the actions in the order given, the first <paramref name="done"/> of which are done already.</summary>
    internal void Follow(double[] groupWeights, ReadOnlySpan<int> actions, int done = 0)
    {
        Start(groupWeights, scoring: false);
        Done = done;
        foreach (int a in actions) Append(a, scoring: false);
    }

    /// <summary>
    /// Highest benefit per cost next, updated after each action; ties go to the lower index. It begins with the action
    /// <paramref name="first"/> whatever its merit, unless that is -1. What is done already comes before all.
    /// </summary>
    internal void Greedy(double[] groupWeights, bool[] openAtStart, int first, ReadOnlySpan<int> done = default)
    {
        Start(groupWeights, scoring: true);
        Array.Copy(openAtStart, open, open.Length);
        Array.Clear(taken);
        blocks.Forget();
        Done = done.Length;
        foreach (int a in done)
        {
            taken[a] = true;
            if (!model.Mends[a].IsEmpty) score[placeOf[a]] = 0;
            Append(a, scoring: true);
        }

        state.Settle();
        foreach (int a in model.Useful)
        {
            if (!taken[a]) Rate(a);
        }

        scanned += score.Length;
        liveCount = score.Length;
        for (int i = 0; i < liveCount; i++) live[i] = i;
        if (first >= 0)
        {
            // No test is assumed between a forced first action and its neighbours: the cluster it opened stays open for them.
            if (clusterOf[first] is >= 0 and var g) Open(g);
            Take(first);
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

    /// <summary>The best action (0 or more), the best closed cluster (its complement), or none.</summary>
    private (int Next, double Ratio) Best()
    {
        int place = -1;
        double best = 0, bar = 0;
        double[] scores = score;
        int[] places = live;
        int kept = 0;
        for (int i = 0, count = liveCount; i < count; i++)
        {
            int at = places[i];
            double own = scores[at];
            if (own > 0 || open.Length > 0) places[kept++] = at;
            if (!(own > bar)) continue;
            best = own;
            bar = best * (1 + Tie);
            place = at;
        }

        liveCount = kept;
        scanned += scores.Length;
        int next = place < 0 ? None : model.Useful[place];
        for (int g = 0; g < open.Length; g++)
        {
            if (open[g] && testInside[g]) continue;
            double block = blocks.Ratio(g, open[g], benefit, taken);
            if (!(block > bar)) continue;
            best = block;
            bar = best * (1 + Tie);
            next = ~g;
        }

        return (next, best);
    }

    private void TakeCluster(int g)
    {
        ReadOnlySpan<int> members = blocks.Members(g, open[g], benefit, taken);
        if (testInside[g])
        {
            // Inside an open cluster the others compete singly again, in the same order and above all outside it.
            int first = members[0];
            Open(g);
            Take(first);
            return;
        }

        foreach (int a in members) Take(a);
    }

    private void Open(int g)
    {
        open[g] = true;
        blocks.Forget(g);
        foreach (int a in model.UsefulInCluster[g])
        {
            if (!taken[a]) Rate(a);
        }
    }

    private void CloseForTest()
    {
        for (int g = 0; g < open.Length; g++)
        {
            if (!open[g] || testInside[g]) continue;
            open[g] = false;
            blocks.Forget(g);
        }
    }

    private void Take(int action)
    {
        taken[action] = true;
        score[placeOf[action]] = 0;
        if (clusterOf[action] is >= 0 and var g) blocks.Forget(g);
        Append(action, scoring: true);
    }

    private void Rerate()
    {
        int[] start = model.MendedBy.Start, actions = model.MendedBy.Entry;
        foreach (int c in state.Changed)
        {
            for (int i = start[c], end = start[c + 1]; i < end; i++)
            {
                int a = actions[i];
                if (taken[a]) continue;
                Rate(a);
                scanned++;
                if (clusterOf[a] is >= 0 and var g) blocks.Forget(g);
            }
        }

        state.Settle();
    }

    private void Rate(int action)
    {
        double helps = state.Benefit(action);
        benefit[action] = helps;
        int g = clusterOf[action];
        bool covered = g >= 0 && !(open[g] && testInside[g]);
        score[placeOf[action]] = covered ? 0 : Ratios.Of(helps, cost[action] + model.Problem.SystemTestCost);
    }

    private void Start(double[] groupWeights, bool scoring)
    {
        state.Begin(groupWeights, scoring);
        (Count, Done) = (0, 0);
        LeftAfter[0] = state.Left;
        RepairSpent[0] = 0;
    }

    private void Append(int action, bool scoring)
    {
        double repair = repairCost is null ? 0 : repairCost[action];
        RepairSpent[Count + 1] = RepairSpent[Count] + (repair > 0 ? repair * state.FindsBroken(action) : 0);
        state.Apply(action, scoring);
        Actions[Count++] = action;
        LeftAfter[Count] = state.Left;
    }
}
