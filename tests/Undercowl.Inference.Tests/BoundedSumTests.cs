namespace Undercowl.Inference.Tests;

/// <summary>
/// The bounded sum against the exact answer on 5,000 random models of rare and (in a third of them) common faults, with
/// readings that make the evidence improbable, likelihoods of any scale, joint readings and hard ones. Independent: the
/// exact elimination, which is itself held to the full joint.
/// </summary>
public sealed class BoundedSumTests
{
    /// <summary>What rounding alone may add to a bound; both answers are sums of positive numbers.</summary>
    private const double Rounding = 1e-12;

    [Fact]
    public void No_probability_is_further_off_than_the_bound_and_the_bound_needs_both_its_terms()
    {
        int reallyBounded = 0, common = 0, improbable = 0, withoutLargest = 0, withoutCovered = 0;
        for (var seed = 0; seed < 5000; seed++)
        {
            var (evidence, roots, wear) = Model(seed);
            var assignments = 1 + seed % 12;
            var exact = Elimination.Run(evidence);
            var bounded = Elimination.Bounded(evidence, new EliminationOptions { Rare = roots, Assignments = assignments, TargetError = 0 });
            var error = 0.0;
            foreach (var v in roots)
            {
                for (var s = 0; s < evidence.Network.States(v); s++)
                    error = Math.Max(error, Math.Abs(exact.Marginal(v)[s] - bounded.Marginal(v)[s]));
            }

            if (error > bounded.ErrorBound + Rounding)
                Assert.Fail($"seed {seed}: error {error:R}, bound {bounded.ErrorBound:R}, {bounded.Terms}");
            Assert.True(bounded.LogEvidence <= exact.LogEvidence + Rounding);
            common += wear ? 1 : 0;
            improbable += exact.LogEvidence < Math.Log(1e-6) ? 1 : 0;
            if (!bounded.Approximate)
                continue;
            reallyBounded++;
            // The two ways in which the formula could be shortened are wrong, and these models show it.
            var terms = bounded.Terms!;
            var covered = Math.Exp(terms.LogCovered);
            var largest = Math.Exp(terms.LogLargest);
            withoutLargest += error > terms.Omitted / (covered + terms.Omitted) + Rounding ? 1 : 0;
            withoutCovered += error > terms.Omitted * largest + Rounding ? 1 : 0;
        }

        Assert.True(reallyBounded >= 500, $"{reallyBounded} really bounded");
        Assert.True(common >= 1600 && improbable >= 500, $"{common} with common faults, {improbable} improbable");
        Assert.True(withoutLargest > 0 && withoutCovered > 0, $"{withoutLargest} and {withoutCovered} break the shortened formulas");
    }

    [Fact]
    public void Running_out_of_rows_falls_back_on_it_and_says_so()
    {
        var fellBack = 0;
        for (var seed = 0; seed < 200; seed++)
        {
            var (evidence, roots, _) = Model(seed);
            var exact = Elimination.Run(evidence);
            if (exact.Products < 40)
                continue;
            var options = new EliminationOptions { RowBudget = exact.Products / 2 };
            Assert.False(Elimination.TryExact(evidence, options, out _));
            Posterior bounded;
            try
            {
                bounded = Elimination.Run(evidence, options);
            }
            catch (InferenceException e) when (e.Fault == InferenceFault.RowBudget)
            {
                // So small a network that not even one assignment fits in fewer rows: refused, which is an answer too.
                continue;
            }

            fellBack += bounded.Terms is null ? 0 : 1;
            foreach (var v in roots)
            {
                for (var s = 0; s < evidence.Network.States(v); s++)
                    Assert.True(Math.Abs(exact.Marginal(v)[s] - bounded.Marginal(v)[s]) <= bounded.ErrorBound + Rounding, $"seed {seed}");
            }

            var refused = options with { AllowBounded = false, RowBudget = 1 };
            Assert.Equal(InferenceFault.RowBudget, Assert.Throws<InferenceException>(() => Elimination.Run(evidence, refused)).Fault);
        }

        Assert.True(fellBack > 20, $"{fellBack}");
    }

    [Fact]
    public void All_assignments_together_are_exact()
    {
        for (var seed = 0; seed < 300; seed++)
        {
            var (evidence, roots, _) = Model(seed);
            int[] few = [.. roots.Take(3)];
            var exact = Elimination.Run(evidence);
            var bounded = Elimination.Bounded(evidence, new EliminationOptions { Rare = few, Assignments = 1000, TargetError = 0 });
            Assert.Equal(0, bounded.ErrorBound);
            Near.Equal(exact.LogEvidence, bounded.LogEvidence, Near.Exact, $"seed {seed}");
            foreach (var v in roots)
                Near.Equal(exact.Marginal(v), bounded.Marginal(v), Near.Exact, $"seed {seed} node {v}");
            // A node in the middle, asked for later, comes from the same assignments.
            var derived = Enumerable.Range(0, evidence.Network.Count).First(v => !evidence.Network.Parents(v).IsEmpty);
            Near.Equal(exact.Marginal(derived), bounded.Marginal(derived), Near.Exact, $"seed {seed} node {derived}");
        }
    }

    [Fact]
    public void Draws_from_a_bounded_sum_follow_its_marginals()
    {
        var (evidence, roots, _) = Model(4);
        var bounded = Elimination.Bounded(evidence, new EliminationOptions { Rare = roots, Assignments = 6, TargetError = 0 });
        const int Draws = 20_000;
        var draws = bounded.Sample(9, Draws);
        foreach (var v in roots)
        {
            for (var s = 0; s < evidence.Network.States(v); s++)
            {
                var p = bounded.Marginal(v)[s];
                var seen = Enumerable.Range(0, Draws).Count(i => draws[i * evidence.Network.Count + v] == s) / (double)Draws;
                // Five standard deviations, and a draw or two where p is next to nothing.
                Assert.InRange(seen, p - 5 * Math.Sqrt(p * (1 - p) / Draws) - 2.0 / Draws, p + 5 * Math.Sqrt(p * (1 - p) / Draws) + 2.0 / Draws);
            }
        }
    }

    private static (Evidence Evidence, int[] Roots, bool Wear) Model(int seed)
    {
        var random = new Random(seed);
        var builder = new NetworkBuilder();
        var wear = seed % 3 == 0;
        var roots = new List<int>();
        for (var i = random.Next(3, 8); i > 0; i--)
        {
            var faulty = wear && i % 2 == 0 ? .35 : Math.Pow(10, -3 + 2 * random.NextDouble());
            var states = random.Next(2, 4);
            roots.Add(builder.Add($"root {i}", states, [], states == 2 ? [1 - faulty, faulty] : [1 - faulty, faulty * .7, faulty * .3]));
        }

        var nodes = new List<int>(roots);
        for (var i = random.Next(2, 7); i > 0; i--)
        {
            var parents = nodes.OrderBy(_ => random.Next()).Take(random.Next(1, 4)).ToArray();
            var rows = parents.Aggregate(1, (n, p) => n * builder.States(p));
            if (random.Next(2) == 0)
            {
                nodes.Add(builder.AddFunction($"gate {i}", 2, parents, [.. Enumerable.Range(0, rows).Select(r => r == 0 ? 0 : random.Next(2))]));
                continue;
            }

            nodes.Add(builder.Add($"noisy {i}", 2, parents, [.. Enumerable.Range(0, rows).SelectMany(_ => Noisy(random))]));
        }

        var network = builder.Build();
        var evidence = new Evidence(network);
        for (var i = random.Next(1, 6); i > 0; i--)
        {
            var v = nodes[random.Next(nodes.Count)];
            var scale = Math.Pow(10, 4 * random.NextDouble() - 2.5);
            if (random.Next(4) == 0)
                evidence.Likelihood([.. new[] { v, roots[0] }.Distinct()], [.. Enumerable.Range(0, network.States(v) * (v == roots[0] ? 1 : network.States(roots[0]))).Select(_ => scale * (.001 + random.NextDouble()))]);
            else
                evidence.Likelihood(v, [.. Enumerable.Range(0, network.States(v)).Select(s => scale * (s == 0 ? .002 : random.NextDouble() + .001))]);
        }

        var last = nodes[^1];
        if (network.Name(last).StartsWith("noisy", StringComparison.Ordinal))
            evidence.Observe(last, 1);
        return (evidence, [.. roots], wear);
    }

    private static double[] Noisy(Random random)
    {
        var p = random.Next(2) == 0 ? Math.Pow(10, -4 * random.NextDouble()) : random.NextDouble();
        return [1 - p, p];
    }
}
