namespace Undercowl.Planning.Tests.Twin;

/// <summary>
/// Invented problems of an engine's make, the same for a seed on every machine: four to six parts in series of which one or two are
/// faulty, checks that read the signal at a point or look at a part and may err, repairs of one or two parts that may fail, and two
/// clusters, one of which must be closed for a test.
/// </summary>
internal static class EngineMade
{
    internal static TroubleshootingProblem Problem(int seed)
    {
        var random = new Random(seed);
        const int actions = 4, checks = 6;
        int parts = random.Next(4, 7), points = random.Next(2, 5);
        double[] prior = RandomCases.Many(random, parts, 0.03, 0.35);
        int[] cluster = [.. Enumerable.Range(0, parts).Select(_ => random.Next(-1, 2))];
        List<bool[]> faults = [.. from a in Enumerable.Range(0, parts) from b in Enumerable.Range(a, parts - a) select Enumerable.Range(0, parts).Select(c => c == a || c == b).ToArray()];

        var success = new double[actions][];
        var actionCluster = new int[actions];
        for (int a = 0; a < actions; a++)
        {
            // The first repair is of two neighbours at once; the others are of one part each.
            int part = a == 0 ? random.Next(parts - 1) : (a - 1) % parts;
            success[a] = new double[parts];
            success[a][part] = random.Next(2) == 0 ? 1 : RandomCases.Between(random, 0.8, 1);
            if (a == 0) success[a][part + 1] = success[a][part];
            actionCluster[a] = cluster[part];
        }

        var rows = new double[checks][][];
        var checkCluster = new int[checks];
        for (int k = 0; k < checks; k++)
        {
            bool signal = k < points;
            int part = random.Next(parts);
            double wrong = signal ? RandomCases.Between(random, 0, 0.1) : RandomCases.Between(random, 0, 0.25);
            rows[k] = [.. faults.Select(f => (signal ? f[..(part + 1)].Any(x => x) : f[part]) ? new[] { wrong, 1 - wrong } : [1 - wrong, wrong])];
            checkCluster[k] = cluster[part];
        }

        return new Case
        {
            Weights = [.. faults.Select(f => Enumerable.Range(0, parts).Aggregate(1.0, (p, c) => p * (f[c] ? prior[c] : 1 - prior[c])))],
            Broken = [.. faults],
            ActionCost = RandomCases.Many(random, actions, 5, 60),
            Success = success,
            ActionCluster = actionCluster,
            CheckCost = RandomCases.Many(random, checks, 0.5, 8),
            Rows = rows,
            CheckCluster = checkCluster,
            Clusters = new ClusterTable { OpenCost = [4, 20], CloseCost = [3, 15], IsOpen = [false, false], TestInside = [true, false] },
            SystemTest = RandomCases.Between(random, 1, 6),
            Refer = RandomCases.Between(random, 120, 300),
        }.Build();
    }
}
