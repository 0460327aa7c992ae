namespace Undercowl.Planning.Sequencing;

/// <summary>
/// The best first visit to a cluster: its actions by benefit per cost, cut where the whole visit, set-up included, gives most
/// per cost. Where the cluster must be closed to test, the visit ends in one test for all its actions.
/// </summary>
internal sealed class ClusterBlocks(RepairModel model)
{
    private readonly double[] ratio = new double[model.Problem.Clusters.OpenCost.Length];
    private readonly bool[] known = new bool[model.Problem.Clusters.OpenCost.Length];
    private readonly int[] sorted = new int[model.Problem.Actions.Cost.Length];
    private readonly double[] key = new double[model.Problem.Actions.Cost.Length];

    internal void Forget() => Array.Clear(known);

    internal void Forget(int cluster) => known[cluster] = false;

    /// <summary>Benefit per cost of the visit; 0 when nothing there helps.</summary>
    internal double Ratio(int cluster, bool open, double[] benefit, bool[] taken)
    {
        if (!known[cluster]) Sort(cluster, open, benefit, taken, out _);
        return ratio[cluster];
    }

    /// <summary>The visit's actions in order; valid until the next call.</summary>
    internal ReadOnlySpan<int> Members(int cluster, bool open, double[] benefit, bool[] taken)
    {
        Sort(cluster, open, benefit, taken, out int length);
        return sorted.AsSpan(0, length);
    }

    private void Sort(int cluster, bool open, double[] benefit, bool[] taken, out int length)
    {
        ClusterTable clusters = model.Problem.Clusters;
        double test = model.Problem.SystemTestCost;
        bool inside = clusters.TestInside[cluster];
        double perAction = inside ? test : 0;
        double cost = open ? 0 : clusters.OpenCost[cluster] + clusters.CloseCost[cluster];
        if (!inside) cost += test;

        int count = 0;
        foreach (int a in model.UsefulInCluster[cluster])
        {
            if (taken[a] || !(benefit[a] > 0)) continue;
            double own = Ratios.Of(benefit[a], model.Problem.Actions.Cost[a] + perAction);
            int at = count++;
            for (; at > 0 && key[at - 1] < own; at--)
            {
                key[at] = key[at - 1];
                sorted[at] = sorted[at - 1];
            }

            key[at] = own;
            sorted[at] = a;
        }

        double sum = 0, best = 0;
        length = 0;
        for (int i = 0; i < count; i++)
        {
            sum += benefit[sorted[i]];
            cost += model.Problem.Actions.Cost[sorted[i]] + perAction;
            double density = Ratios.Of(sum, cost);
            if (!(density > best)) continue;
            best = density;
            length = i + 1;
        }

        ratio[cluster] = best;
        known[cluster] = true;
    }
}
