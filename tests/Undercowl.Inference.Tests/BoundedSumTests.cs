namespace Undercowl.Inference.Tests;

/// <summary>
/// The bounded sum against the exact answer on 5,000 random models of rare faults, with likelihoods of any scale, joint
/// readings and hard ones. A third of them have common wear from which several faults come, and readings at odds until the
/// evidence has a probability below one in a million. Independent: the exact elimination, which is itself held to the full joint.
/// </summary>
public sealed class BoundedSumTests
{
    /// <summary>What rounding alone may add to a bound; both answers are sums of positive numbers.</summary>
    private const double Rounding = 1e-12;

    private static readonly double Improbable = Math.Log(1e-6);

    [Fact]
    public void No_probability_is_further_off_than_the_bound_and_the_bound_needs_both_its_terms()
    {
        int fellBack = 0, reallyBounded = 0, improbableWear = 0, withoutLargest = 0, withoutCovered = 0, withoutCoveredInWear = 0;
        for (var seed = 0; seed < 5000; seed++)
        {
            var (evidence, rare, wear) = Model(seed);
            int[] all = [.. Enumerable.Range(0, evidence.Network.Count)];
            var exact = Elimination.Run(evidence, new EliminationOptions { Wanted = all });
            var options = new EliminationOptions { Rare = rare, Assignments = 1 + seed % 12, TargetError = 0, Wanted = all };
            // One row too few for the exact sum; where not even one assignment fits in that, the sum is asked for with more room.
            var bounded = FallBack(evidence, options with { RowBudget = exact.Products + exact.Rows - 1 });
            fellBack += bounded is null ? 0 : 1;
            bounded ??= Elimination.Bounded(evidence, options);
            var error = 0.0;
            foreach (var v in all)
            {
                for (var s = 0; s < evidence.Network.States(v); s++)
                    error = Math.Max(error, Math.Abs(exact.Marginal(v)[s] - bounded.Marginal(v)[s]));
            }

            if (error > bounded.ErrorBound + Rounding)
                Assert.Fail($"seed {seed}: error {error:R}, bound {bounded.ErrorBound:R}, {bounded.Terms}");
            Assert.True(bounded.LogEvidence <= exact.LogEvidence + Rounding);
            improbableWear += wear && exact.LogEvidence < Improbable ? 1 : 0;
            if (!bounded.Approximate)
                continue;
            reallyBounded++;
            // The two ways in which the formula could be shortened are wrong, and these models show it.
            var terms = bounded.Terms!;
            var covered = Math.Exp(terms.LogCovered);
            var largest = Math.Exp(terms.LogLargest);
            withoutLargest += error > terms.Omitted / (covered + terms.Omitted) + Rounding ? 1 : 0;
            var broken = error > terms.Omitted * largest + Rounding ? 1 : 0;
            withoutCovered += broken;
            withoutCoveredInWear += wear ? broken : 0;
        }

        Assert.True(3 * improbableWear >= 5000, $"{improbableWear} with common wear and evidence below one in a million");
        Assert.True(fellBack >= 500 && reallyBounded >= 500, $"{fellBack} fell back, {reallyBounded} really bounded");
        Assert.True(withoutLargest > 0 && withoutCovered > withoutCoveredInWear && withoutCoveredInWear > 0, $"{withoutLargest}, {withoutCovered} and {withoutCoveredInWear} break the shortened formulas");
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

    /// <summary>The bounded sum that the ordinary way ends in, or null when it comes to another end.</summary>
    private static Posterior? FallBack(Evidence evidence, EliminationOptions options)
    {
        try
        {
            return Elimination.Run(evidence, options) is { Terms: not null } bounded ? bounded : null;
        }
        catch (InferenceException e) when (e.Fault == InferenceFault.RowBudget)
        {
            return null;
        }
    }

    /// <summary>Every third model has common wear: an uncertain root that is not among the rare ones, with faults that come from it.</summary>
    private static (Evidence Evidence, int[] Rare, bool Wear) Model(int seed)
    {
        var random = new Random(seed);
        var builder = new NetworkBuilder();
        var wear = seed % 3 == 0;
        var rare = new List<int>();
        for (var i = random.Next(3, 8); i > 0; i--)
        {
            var faulty = Math.Pow(10, -3 + 2 * random.NextDouble());
            var states = random.Next(2, 4);
            rare.Add(builder.Add($"root {i}", states, [], states == 2 ? [1 - faulty, faulty] : [1 - faulty, faulty * .7, faulty * .3]));
        }

        var nodes = new List<int>(rare);
        if (wear)
        {
            var worn = builder.Add("wear", 2, [], [.65, .35]);
            for (var i = random.Next(2, 5); i > 0; i--)
            {
                var (fresh, old) = (Math.Pow(10, -4 + random.NextDouble()), Math.Pow(10, -1.5 + random.NextDouble()));
                nodes.Add(builder.Add($"worn {i}", 2, [worn], [1 - fresh, fresh, 1 - old, old]));
            }
        }

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
            // With wear the numbers are probabilities, so that the evidence as a whole has one.
            var scale = wear ? .5 : Math.Pow(10, 4 * random.NextDouble() - 2.5);
            if (random.Next(4) == 0)
                evidence.Likelihood([.. new[] { v, rare[0] }.Distinct()], [.. Enumerable.Range(0, network.States(v) * (v == rare[0] ? 1 : network.States(rare[0]))).Select(_ => scale * (.001 + random.NextDouble()))]);
            else
                evidence.Likelihood(v, [.. Enumerable.Range(0, network.States(v)).Select(s => scale * (s == 0 ? .002 : random.NextDouble() + .001))]);
        }

        var last = nodes[^1];
        if (network.Name(last).StartsWith("noisy", StringComparison.Ordinal))
            evidence.Observe(last, 1);
        // More readings, for a fault and against one, until all together are improbable.
        while (wear && Elimination.Run(evidence).LogEvidence >= Improbable)
        {
            var v = nodes[random.Next(nodes.Count)];
            evidence.Likelihood(v, [.. Enumerable.Range(0, network.States(v)).Select(s => s == 0 == (random.Next(4) == 0) ? 1 : .001 + .05 * random.NextDouble())]);
        }

        return (evidence, [.. rare], wear);
    }

    private static double[] Noisy(Random random)
    {
        var p = random.Next(2) == 0 ? Math.Pow(10, -4 * random.NextDouble()) : random.NextDouble();
        return [1 - p, p];
    }
}
