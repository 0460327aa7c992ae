namespace Undercowl.Inference.Tests;

/// <summary>
/// Random small networks and evidence: at least half of all rows deterministic, zeros in the others, nodes of one to four
/// states, observed states, soft, jointly soft and zero-bearing likelihoods, interventions. A case is its seed.
/// </summary>
internal static class RandomCases
{
    public static Case Make(int seed, int largest = 12, int jointLimit = 20_000)
    {
        var random = new Random(seed);
        var c = new Case(Network(random, largest, jointLimit));
        var findings = random.Next(0, 6);
        for (var i = 0; i < findings; i++)
            AddFinding(random, c);
        if (random.Next(3) == 0)
        {
            var v = random.Next(c.Network.Count);
            c.Intervene(v, random.Next(c.Network.States(v)));
        }

        return c;
    }

    public static double[] Positive(Random random, int count, double zeros)
    {
        var x = new double[count];
        for (var i = 0; i < count; i++)
            x[i] = random.NextDouble() < zeros ? 0 : Math.Pow(10, 1 - 4 * random.NextDouble());
        return x;
    }

    private static Network Network(Random random, int largest, int jointLimit)
    {
        var builder = new NetworkBuilder();
        var size = 1;
        var count = random.Next(1, largest + 1);
        for (var v = 0; v < count; v++)
        {
            var states = random.Next(12) == 0 ? 1 : random.Next(2, 5);
            if (size * states > jointLimit)
                break;
            size *= states;
            var parents = Enumerable.Range(0, v).OrderBy(_ => random.Next()).Take(random.Next(0, 4)).ToArray();
            var rows = parents.Aggregate(1, (n, p) => n * builder.States(p));
            if (parents.Length > 0 && random.Next(4) == 0)
            {
                builder.AddFunction($"n{v}", states, parents, [.. Enumerable.Range(0, rows).Select(_ => random.Next(states))]);
                continue;
            }

            var table = new double[rows * states];
            for (var r = 0; r < rows; r++)
                Row(random, parents.Length == 0, table.AsSpan(r * states, states));
            builder.Add($"n{v}", states, parents, table);
        }

        return builder.Build();
    }

    private static void Row(Random random, bool root, Span<double> row)
    {
        if (!root && random.Next(2) == 0)
        {
            row[random.Next(row.Length)] = 1;
            return;
        }

        var x = Positive(random, row.Length, 0.2);
        x[random.Next(x.Length)] += 0.1;
        var sum = x.Sum();
        for (var s = 0; s < row.Length; s++)
            row[s] = x[s] / sum;
    }

    private static void AddFinding(Random random, Case c)
    {
        var label = $"f{random.Next(8)}";
        var v = random.Next(c.Network.Count);
        switch (random.Next(3))
        {
            case 0:
                c.Observe(v, random.Next(c.Network.States(v)), label);
                break;
            case 1:
                c.Likelihood([v], Positive(random, c.Network.States(v), 0.15), label);
                break;
            default:
                var scope = Enumerable.Range(0, c.Network.Count).OrderBy(_ => random.Next()).Take(random.Next(1, 4)).ToArray();
                c.Likelihood(scope, Positive(random, scope.Aggregate(1, (n, u) => n * c.Network.States(u)), 0.15), label);
                break;
        }
    }
}
