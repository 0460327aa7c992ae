namespace Undercowl.Inference.Tests;

/// <summary>Independent: explanations, samples and conflicts against the full joint multiplied out.</summary>
public sealed class AnswersTests
{
    [Fact]
    public void Explanations_are_the_heaviest_joint_states_of_the_chosen_nodes()
    {
        for (var seed = 20_000; seed < 21_000; seed++)
        {
            var c = RandomCases.Make(seed, 9, 4000);
            var twin = new FullJoint(c);
            if (twin.Total == 0)
                continue;
            var random = new Random(seed);
            var chosen = Enumerable.Range(0, c.Network.Count).OrderBy(_ => random.Next()).Take(random.Next(1, 5)).ToArray();
            var joint = twin.Joint(chosen);
            var found = MostProbable.Explanations(c.Evidence, chosen, 5);
            var heaviest = joint.Where(p => p > 0).OrderDescending().Take(5).ToArray();
            Near.Equal(heaviest, [.. found.Select(e => e.Probability)], Near.Exact, $"seed {seed}");
            foreach (var e in found)
            {
                var index = 0;
                for (var i = 0; i < chosen.Length; i++)
                    index = index * c.Network.States(chosen[i]) + e.States[i];
                Near.Equal(joint[index], e.Probability, Near.Exact, $"seed {seed} states");
            }
        }
    }

    [Fact]
    public void Explanations_over_as_many_as_twelve_nodes_are_the_heaviest_joint_states_too()
    {
        var widest = 0;
        for (var seed = 40_000; seed < 40_060; seed++)
        {
            var c = RandomCases.Make(seed, 14, 60_000);
            var twin = new FullJoint(c);
            if (twin.Total == 0)
                continue;
            int[] chosen = [.. Enumerable.Range(0, c.Network.Count).Take(12)];
            widest = Math.Max(widest, chosen.Length);
            var heaviest = twin.Joint(chosen).OrderDescending().Take(5).ToArray();
            var found = MostProbable.Explanations(c.Evidence, chosen, 5);
            for (var i = 0; i < found.Count; i++)
                Near.Equal(heaviest[i], found[i].Probability, Near.Exact, $"seed {seed} place {i}");
        }

        Assert.Equal(12, widest);
    }

    [Fact]
    public void More_than_twelve_chosen_nodes_are_refused()
    {
        var builder = new NetworkBuilder();
        for (var i = 0; i < 13; i++)
            builder.Add($"n{i}", 2, [], [0.5, 0.5]);
        var fault = Assert.Throws<InferenceException>(() => MostProbable.Explanations(new Evidence(builder.Build()), [.. Enumerable.Range(0, 13)], 1));
        Assert.Equal(InferenceFault.Evidence, fault.Fault);
    }

    /// <summary>
    /// Chi-square of 1,000 single draws against the joint distribution, 250 networks, fixed seeds. The sum of the statistics has as
    /// many degrees of freedom as all tests together; five standard deviations off means a wrong sampler.
    /// </summary>
    [Fact]
    public void Single_draws_have_the_frequencies_of_the_joint_distribution()
    {
        var (statistic, freedom) = ChiSquare(1000, (posterior, seed, draws) => [.. Enumerable.Range(0, draws).SelectMany(i => posterior.Sample((ulong)(seed * 10_000 + i), 1))]);
        Assert.True(freedom > 300, $"{freedom} degrees of freedom");
        Assert.InRange(statistic, freedom - 5 * Math.Sqrt(2 * freedom), freedom + 5 * Math.Sqrt(2 * freedom));
    }

    /// <summary>Drawn together they lie closer to the joint distribution than independent draws would by any chance.</summary>
    [Fact]
    public void Draws_taken_together_scatter_less_than_single_ones()
    {
        var (statistic, freedom) = ChiSquare(4000, (posterior, seed, draws) => posterior.Sample((ulong)seed, draws));
        Assert.True(freedom > 300, $"{freedom} degrees of freedom");
        Assert.InRange(statistic, 0, freedom - 5 * Math.Sqrt(2 * freedom));
    }

    private static (double Statistic, double Freedom) ChiSquare(int draws, Func<Posterior, int, int, int[]> draw)
    {
        double statistic = 0, freedom = 0;
        for (var seed = 30_000; seed < 30_250; seed++)
        {
            var c = RandomCases.Make(seed, 6, 200);
            var twin = new FullJoint(c);
            if (twin.Total == 0)
                continue;
            var drawn = draw(Elimination.Run(c.Evidence), seed, draws);
            var joint = twin.Joint([.. Enumerable.Range(0, c.Network.Count)]);
            var counts = new int[joint.Length];
            for (var i = 0; i < draws; i++)
            {
                var index = 0;
                for (var v = 0; v < c.Network.Count; v++)
                    index = index * c.Network.States(v) + drawn[i * c.Network.Count + v];
                counts[index]++;
            }

            double rareExpected = 0, rareCount = 0;
            for (var i = 0; i < joint.Length; i++)
            {
                var expected = joint[i] * draws;
                if (joint[i] == 0)
                    Assert.Equal(0, counts[i]);
                else if (expected < 5)
                    (rareExpected, rareCount) = (rareExpected + expected, rareCount + counts[i]);
                else
                    (statistic, freedom) = (statistic + (counts[i] - expected) * (counts[i] - expected) / expected, freedom + 1);
            }

            if (rareExpected >= 5)
                (statistic, freedom) = (statistic + (rareCount - rareExpected) * (rareCount - rareExpected) / rareExpected, freedom + 1);
            freedom--;
        }

        return (statistic, freedom);
    }

    [Fact]
    public void The_same_seed_draws_the_same_and_another_does_not()
    {
        var c = RandomCases.Make(3, 9);
        var posterior = Elimination.Run(new Evidence(c.Network));
        Assert.Equal(posterior.Sample(5, 50), posterior.Sample(5, 50));
        Assert.NotEqual(posterior.Sample(5, 50), posterior.Sample(6, 50));
    }

    /// <summary>From memory: the first outputs of SplitMix64 seeded with 1234567, as many implementations list them.</summary>
    [Fact]
    public void The_generator_gives_its_known_numbers()
    {
        var random = new SplitMix64(1234567);
        ulong[] expected = [6457827717110365317, 3203168211198807973, 9817491932198370423, 4593380528125082431, 16408922859458223821];
        Assert.Equal(expected, expected.Select(_ => random.NextBits()));
    }

    [Fact]
    public void The_conflict_measure_and_its_shares_follow_from_totals_of_the_full_joint()
    {
        var tried = 0;
        for (var seed = 40_000; seed < 40_400; seed++)
        {
            var c = RandomCases.Make(seed, 7, 500);
            var total = Total(c, _ => true);
            if (total == 0 || c.Evidence.Count == 0)
                continue;
            tried++;
            var conflict = Conflict.Of(c.Evidence);
            var labels = Enumerable.Range(0, c.Evidence.Count).Select(c.Evidence.Label).Distinct().ToArray();
            var expected = labels.Sum(l => Math.Log(Total(c, f => c.Evidence.Label(f) == l))) - Math.Log(total);
            Near.Equal(expected, conflict.Measure, 1e-9, $"seed {seed}");
            Assert.Empty(conflict.Irreducible);
            Assert.Equal(labels.Order(), conflict.Shares.Select(s => s.Label).Order());
            Assert.Equal(conflict.Shares.Select(s => s.Measure).OrderDescending(), conflict.Shares.Select(s => s.Measure));
            foreach (var share in conflict.Shares)
            {
                var alone = Total(c, f => c.Evidence.Label(f) == share.Label);
                var others = Total(c, f => c.Evidence.Label(f) != share.Label);
                Near.Equal(Math.Log(alone * others / total), share.Measure, 1e-9, $"seed {seed} {share.Label}");
            }
        }

        Assert.True(tried > 100, $"{tried}");
    }

    [Fact]
    public void Contradictory_findings_are_named_so_that_any_fewer_would_be_possible()
    {
        var tried = 0;
        for (var seed = 50_000; seed < 50_600; seed++)
        {
            var c = RandomCases.Make(seed, 7, 500);
            if (Total(c, _ => true) > 0)
                continue;
            tried++;
            var labels = Conflict.Of(c.Evidence).Irreducible;
            Assert.Equal(0, Total(c, f => labels.Contains(c.Evidence.Label(f))));
            foreach (var label in labels)
                Assert.True(Total(c, f => labels.Contains(c.Evidence.Label(f)) && c.Evidence.Label(f) != label) > 0, $"seed {seed}");
        }

        Assert.True(tried > 40, $"{tried}");
    }

    private static double Total(Case c, Func<int, bool> keep)
    {
        var part = new Case(c.Network);
        foreach (var (v, s) in c.Forced)
            part.Intervene(v, s);
        for (var f = 0; f < c.Likelihoods.Count; f++)
        {
            if (keep(f))
                part.Likelihood(c.Likelihoods[f].Scope, c.Likelihoods[f].Dense);
        }

        return new FullJoint(part).Total;
    }
}
