namespace Undercowl.Planning.Tests.Twin;

/// <summary>Small invented problems, the same for a seed on every machine and free of ties.</summary>
internal static class RandomCases
{
    /// <summary>Single faults, each attacked by at most one action, imperfect or not: the classical assumptions.</summary>
    internal static Case Classical(int seed, int checks)
    {
        var random = new Random(seed);
        int faults = random.Next(2, 5);
        var success = new double[faults][];
        for (int a = 0; a < faults; a++)
        {
            success[a] = new double[faults];
            success[a][a] = random.Next(2) == 0 ? 1 : Between(random, 0.3, 1);
        }

        return new Case
        {
            Weights = Many(random, faults, 0.05, 1),
            ActionCost = Many(random, faults, 1, 20),
            Success = success,
            RepairCost = random.Next(2) == 0 ? null : Many(random, faults, 0, 20),
            CheckCost = Many(random, checks, 0.2, 4),
            Rows = [.. Enumerable.Range(0, checks).Select(_ => Outcomes(random, faults))],
            Refer = Between(random, 10, 80),
        };
    }

    /// <summary>Several faults at once, overlapping actions, a paid system test, clusters of both kinds, a goal perhaps met.</summary>
    internal static Case Tangled(int seed, int checks)
    {
        var random = new Random(seed);
        int components = random.Next(2, 5), hypotheses = random.Next(3, 6), actions = random.Next(3, 5);
        return new Case
        {
            Weights = Many(random, hypotheses, 0.05, 1),
            Broken = [.. Enumerable.Range(0, hypotheses).Select(_ => Fault(random, components))],
            ActionCost = Many(random, actions, 1, 20),
            Success =
            [
                .. Enumerable.Range(0, actions).Select(_ => Flags(random, components, 0.6)
                    .Select(f => !f ? 0 : random.Next(2) == 0 ? 1 : Between(random, 0.3, 1)).ToArray()),
            ],
            RepairCost = random.Next(2) == 0 ? null : Many(random, actions, 0, 20),
            ActionCluster = [.. Enumerable.Range(0, actions).Select(_ => random.Next(-1, 2))],
            CheckCost = Many(random, checks, 0.2, 4),
            Rows = [.. Enumerable.Range(0, checks).Select(_ => Outcomes(random, hypotheses))],
            CheckCluster = [.. Enumerable.Range(0, checks).Select(_ => random.Next(-1, 2))],
            Clusters = new ClusterTable
            {
                OpenCost = Many(random, 2, 0, 8),
                CloseCost = Many(random, 2, 0, 5),
                IsOpen = Flags(random, 2, 0.3),
                TestInside = Flags(random, 2, 0.5),
            },
            SystemTest = random.Next(3) == 0 ? 0 : Between(random, 0.2, 5),
            Refer = Between(random, 20, 300),
        };
    }

    /// <summary>Mostly one or two broken components; one time in ten none.</summary>
    private static bool[] Fault(Random random, int components)
    {
        bool[] broken = Flags(random, components, 0.25);
        if (random.Next(10) > 0) broken[random.Next(components)] = true;
        return broken;
    }

    internal static double Between(Random random, double low, double high) => low + (high - low) * random.NextDouble();

    internal static double[] Many(Random random, int count, double low, double high) =>
        [.. Enumerable.Range(0, count).Select(_ => Between(random, low, high))];

    internal static bool[] Flags(Random random, int count, double probability) =>
        [.. Enumerable.Range(0, count).Select(_ => random.NextDouble() < probability)];

    internal static double[][] Outcomes(Random random, int hypotheses)
    {
        int outcomes = random.Next(2, 4);
        return
        [
            .. Enumerable.Range(0, hypotheses).Select(_ =>
            {
                // Cubes make most rows lean to one outcome, as real checks do.
                double[] row = [.. Many(random, outcomes, 0, 1).Select(x => x * x * x)];
                double sum = row.Sum();
                return row.Select(x => x / sum).ToArray();
            }),
        ];
    }
}
