namespace Undercowl.Inference.Tests;

/// <summary>
/// The sum stage by stage against exact answers: the full joint on random small networks cut into stages in any way, and the
/// exact elimination on lanes that share outputs, trade parts and meet in a fold. Independent: neither knows stages.
/// </summary>
public sealed class SweptSumTests
{
    private const double Rounding = 1e-12;

    private static readonly double Improbable = Math.Log(1e-6);

    private static readonly double[] Fine = [.9, .1];
    private static readonly double[] Dead = [.2, .8];

    [Fact]
    public void With_room_for_all_joint_states_any_stages_give_the_full_joint()
    {
        int possible = 0, impossible = 0;
        for (var seed = 20_000; seed < 23_000; seed++)
        {
            var c = RandomCases.Make(seed);
            var twin = new FullJoint(c);
            var options = new EliminationOptions { Stages = Stages(new Random(seed), c.Network.Count), Wanted = [.. Enumerable.Range(0, c.Network.Count)] };
            Assert.True(Elimination.TrySwept(c.Evidence, options, out var swept), $"seed {seed}");
            Assert.Equal(twin.Total > 0, swept.Possible);
            possible += swept.Possible ? 1 : 0;
            impossible += swept.Possible ? 0 : 1;
            if (!swept.Possible)
                continue;
            Near.Equal(Math.Log(twin.Total), swept.LogEvidence, Near.Exact, $"seed {seed} ln P(e)");
            for (var v = 0; v < c.Network.Count; v++)
                Near.Equal(twin.Joint(v), swept.Marginal(v), Near.Exact, $"seed {seed} node {v}");
        }

        Assert.True(possible > 1200 && impossible > 200, $"{possible} possible, {impossible} impossible");
    }

    [Fact]
    public void On_any_network_no_probability_is_further_off_than_the_bound()
    {
        var shed = 0;
        for (var seed = 30_000; seed < 33_000; seed++)
        {
            var c = RandomCases.Make(seed);
            var twin = new FullJoint(c);
            var random = new Random(seed);
            var options = new EliminationOptions { Stages = Stages(random, c.Network.Count), Beam = random.Next(1, 7), Wanted = [.. Enumerable.Range(0, c.Network.Count)] };
            if (twin.Total == 0 || !Elimination.TrySwept(c.Evidence, options, out var swept))
                continue;
            shed += swept.ErrorBound > 0 ? 1 : 0;
            Assert.True(swept.LogEvidence <= Math.Log(twin.Total) + Rounding, $"seed {seed}");
            for (var v = 0; v < c.Network.Count; v++)
                Within(twin.Joint(v), swept, v, $"seed {seed}");
        }

        Assert.True(shed > 500, $"{shed} shed");
    }

    [Fact]
    public void On_lanes_that_meet_no_probability_is_further_off_than_the_bound_and_the_bound_is_of_use_and_needs_both_its_terms()
    {
        int answered = 0, shed = 0, shedInWear = 0, shedBefore = 0, close = 0, closeInWear = 0, improbableWear = 0, withoutLargest = 0, withoutCovered = 0, withoutCoveredInWear = 0;
        for (var model = 0; model < 5000; model++)
        {
            // Every third has common wear; either kind counts its own seeds.
            var wear = model % 3 == 0;
            var seed = wear ? model / 3 : model - model / 3 - 1;
            var (evidence, stages) = Lanes(seed, wear);
            var exact = Elimination.Run(evidence);
            var options = new EliminationOptions { Stages = stages, Beam = 1 << (seed % 6) };
            if (!Elimination.TrySwept(evidence, options, out var swept))
                continue;
            answered++;
            improbableWear += wear && exact.LogEvidence < Improbable ? 1 : 0;
            Assert.True(swept.LogEvidence <= exact.LogEvidence + Rounding, $"seed {seed}");
            var error = 0.0;
            for (var v = 0; v < evidence.Network.Count; v++)
            {
                if (evidence.Network.Parents(v).IsEmpty)
                    error = Math.Max(error, Within(exact.Marginal(v), swept, v, $"seed {seed}"));
            }

            if (swept.Swept is not { } terms)
                continue;
            shed++;
            shedInWear += wear ? 1 : 0;
            closeInWear += wear && swept.ErrorBound < .1 ? 1 : 0;
            // How many come close is held to what it was when there were 2,000 of these.
            shedBefore += !wear && seed < 2000 ? 1 : 0;
            close += !wear && seed < 2000 && swept.ErrorBound < .1 ? 1 : 0;
            // The two ways in which the formula could be shortened are wrong, and these models show it.
            withoutLargest += error > 1 / (1 + Math.Exp(terms.LogCovered - terms.LogShed)) + Rounding ? 1 : 0;
            var broken = error > Math.Exp(terms.LogLost) + Rounding ? 1 : 0;
            withoutCovered += broken;
            withoutCoveredInWear += wear ? broken : 0;
        }

        Assert.True(3 * improbableWear >= answered && answered > 4900, $"{answered} answered, {improbableWear} with common wear and evidence below one in a million");
        Assert.True(shed > 2500 && shedInWear > 500, $"{shed} shed, {shedInWear} of them with common wear");
        // Beams are narrow, and improbable evidence leaves little to hold what was shed against.
        Assert.True(close > shedBefore / 4 && closeInWear > 50, $"{close} of {shedBefore} within a tenth, {closeInWear} with common wear");
        Assert.True(withoutLargest > 0 && withoutCovered > withoutCoveredInWear && withoutCoveredInWear > 0, $"{withoutLargest}, {withoutCovered} and {withoutCoveredInWear} break the shortened formulas");
    }

    /// <summary>Derived: each state is favoured by one of three findings and weighs 1e-400 for the other two together, which no double holds; so the priors stand.</summary>
    [Fact]
    public void Rows_that_weigh_less_than_any_double_are_still_missed_when_they_are_shed()
    {
        double[] prior = [.4, .4, .2];
        var builder = new NetworkBuilder();
        var root = builder.Add("root", 3, [], prior);
        var node = root;
        int[] copies = [.. Enumerable.Range(0, 4).Select(i => node = builder.AddFunction($"copy {i}", 3, [node], [0, 1, 2]))];
        var evidence = new Evidence(builder.Build());
        for (var i = 0; i < 50; i++)
        {
            for (var favoured = 0; favoured < 3; favoured++)
                evidence.Likelihood(copies[favoured + 1], [.. Enumerable.Range(0, 3).Select(s => s == favoured ? 1 : 1e-4)]);
        }

        Assert.True(Elimination.TrySwept(evidence, new EliminationOptions { Stages = [.. copies.Select(c => new[] { c })], Beam = 1 }, out var swept));
        Within(prior, swept, root, "priors");
        Assert.InRange(swept.ErrorBound, .6 - Rounding, .61);
    }

    [Fact]
    public void It_is_what_is_done_when_the_exact_sum_does_not_fit()
    {
        var swept = 0;
        for (var seed = 0; seed < 200; seed++)
        {
            var (evidence, stages) = Lanes(seed);
            var exact = Elimination.Run(evidence);
            var options = new EliminationOptions { Stages = stages, Beam = 64, RowBudget = exact.Products + exact.Rows - 1 };
            if (Elimination.TryExact(evidence, options, out _) || !Elimination.TrySwept(evidence, options, out var alone))
                continue;
            var run = Elimination.Run(evidence, options);
            Assert.Equal(alone.ErrorBound, run.ErrorBound);
            Assert.Equal(alone.Marginal(0), run.Marginal(0));
            swept++;
        }

        Assert.True(swept > 20, $"{swept}");
    }

    [Fact]
    public void A_node_that_was_not_asked_for_is_refused_by_its_name_and_not_for_want_of_rows()
    {
        var refused = 0;
        for (var seed = 0; seed < 100; seed++)
        {
            var (evidence, stages) = Lanes(seed);
            if (!Elimination.TrySwept(evidence, new EliminationOptions { Stages = stages, Beam = 4, RowBudget = 100_000 }, out var swept) || swept.Swept is null)
                continue;
            // Nothing follows from the last fold's reading, so it is left out unless it was seen or asked for.
            var seen = Enumerable.Range(0, evidence.Network.Count).Where(v => evidence.Network.Name(v).StartsWith("seen", StringComparison.Ordinal)).ToList();
            foreach (var v in seen.Where(v => Enumerable.Range(0, evidence.Count).All(f => evidence.Label(f) != evidence.Network.Name(v))))
            {
                var fault = Assert.Throws<InferenceException>(() => swept.Marginal(v).Length);
                Assert.Equal(InferenceFault.Evidence, fault.Fault);
                Assert.Contains(evidence.Network.Name(v), fault.Message, StringComparison.Ordinal);
                refused++;
            }
        }

        Assert.True(refused > 20, $"{refused} refused");
    }

    [Fact]
    public void Draws_from_it_follow_its_marginals()
    {
        // The first case in which something worth mentioning was left out.
        var (evidence, swept) = Enumerable.Range(0, 100).Select(seed => Lanes(seed))
            .Select(c => (c.Evidence, Swept: Elimination.TrySwept(c.Evidence, new EliminationOptions { Stages = c.Stages, Beam = 8 }, out var posterior) ? posterior : null))
            .First(c => c.Swept?.ErrorBound is > 1e-3 and < .5);
        const int Draws = 20_000;
        var draws = swept!.Sample(9, Draws);
        for (var v = 0; v < evidence.Network.Count; v++)
        {
            if (!evidence.Network.Parents(v).IsEmpty)
                continue;
            for (var s = 0; s < evidence.Network.States(v); s++)
            {
                var p = swept.Marginal(v)[s];
                var seen = Enumerable.Range(0, Draws).Count(i => draws[i * evidence.Network.Count + v] == s) / (double)Draws;
                // Five standard deviations, and a draw or two where p is next to nothing.
                Assert.InRange(seen, p - 5 * Math.Sqrt(p * (1 - p) / Draws) - 2.0 / Draws, p + 5 * Math.Sqrt(p * (1 - p) / Draws) + 2.0 / Draws);
            }
        }
    }

    /// <summary>Returns how far the node's probabilities are off.</summary>
    private static double Within(ReadOnlySpan<double> truth, Posterior swept, int node, string what)
    {
        var given = swept.Marginal(node);
        var error = 0.0;
        for (var s = 0; s < truth.Length; s++)
        {
            error = Math.Max(error, Math.Abs(truth[s] - given[s]));
            if (error > swept.ErrorBound + Rounding)
                Assert.Fail($"{what} node {node}: {given[s]:R} for {truth[s]:R}, bound {swept.ErrorBound:R}");
        }

        return error;
    }

    /// <summary>Any nodes as stages, in the order of the network: sense is not needed for the answer to be right.</summary>
    private static int[][] Stages(Random random, int nodes)
    {
        int[] places = [.. Enumerable.Range(0, nodes).Where(_ => random.Next(3) > 0)];
        var stages = new List<int[]>();
        for (var i = 0; i < places.Length;)
        {
            var many = random.Next(1, 4);
            stages.Add([.. places.Skip(i).Take(many)]);
            i += many;
        }

        return [.. stages];
    }

    /// <summary>
    /// Lanes of a few rare faults behind a shared output, in set-ups of which the later one cuts a shared influence and trades a
    /// private part between two lanes; a fold that tells none, one and more dead lanes apart; noisy readings of lanes and folds. When
    /// worn, most faults come from common wear, and readings at odds go on until all together are improbable.
    /// </summary>
    private static (Evidence Evidence, int[][] Stages) Lanes(int seed, bool worn = false)
    {
        var random = new Random(seed);
        var builder = new NetworkBuilder();
        int lanes = random.Next(2, 6), setUps = random.Next(1, 4);
        var wear = worn ? builder.Add("wear", 2, [], [.65, .35]) : -1;
        int[] shared = [.. Enumerable.Range(0, random.Next(2, 5)).Select(i => Fault($"shared {i}"))];
        int[][] own = [.. Enumerable.Range(0, lanes).Select(l => Enumerable.Range(0, random.Next(1, 4)).Select(i => Fault($"lane {l} part {i}")).ToArray())];
        var stages = Enumerable.Range(0, lanes).Select(_ => new List<int>()).ToArray();
        var readable = new List<int>();
        for (var k = 0; k < setUps; k++)
        {
            var output = builder.AddFunction($"output/{k}", 3, shared, Worst(shared, cut: k > 0 ? k % shared.Length : -1));
            var fold = -1;
            for (var l = 0; l < lanes; l++)
            {
                var parts = own[l];
                if (k > 0 && l < 2)
                    parts = [own[1 - l][0], .. own[l].Skip(1)];
                int[] parents = [output, .. parts];
                var dead = builder.AddFunction($"dead/{k}/{l}", 2, parents, [.. Worst(parents, -1).Select(level => level > 0 ? 1 : 0)]);
                readable.Add(dead);
                fold = fold < 0 ? dead : builder.AddFunction($"fold/{k}/{l}", 3, [fold, dead], [.. Enumerable.Range(0, builder.States(fold) * 2).Select(r => Math.Min(2, r / 2 + r % 2))]);
                stages[l].Add(fold);
            }

            readable.Add(fold);
            readable.Add(builder.Add($"seen/{k}", 2, [fold], [.. Enumerable.Range(0, builder.States(fold)).SelectMany(s => s == 0 ? Fine : Dead)]));
        }

        var network = builder.Build();
        var evidence = new Evidence(network);
        // Readings may be densities, which are larger than 1 where they are sharp; with wear all are probabilities.
        var scale = !worn && seed % 3 == 1 ? 100 : 1;
        for (var i = random.Next(2, 7); i > 0; i--)
        {
            var v = readable[random.Next(readable.Count)];
            if (network.Name(v).StartsWith("seen", StringComparison.Ordinal))
                evidence.Observe(v, seed % 2);
            else if (random.Next(4) == 0)
                evidence.Likelihood([shared[0], v], [.. Enumerable.Range(0, network.States(shared[0]) * network.States(v)).Select(_ => scale * Math.Pow(10, -3 * random.NextDouble()))]);
            else
                evidence.Likelihood(v, [.. Enumerable.Range(0, network.States(v)).Select(s => scale * (s == 0 ? .01 : Math.Pow(10, -2 * random.NextDouble())))]);
        }

        while (wear >= 0 && Elimination.Run(evidence).LogEvidence >= Improbable)
        {
            var v = readable[random.Next(readable.Count)];
            evidence.Likelihood(v, [.. Enumerable.Range(0, network.States(v)).Select(s => s == 0 == (random.Next(4) == 0) ? 1 : .001 + .05 * random.NextDouble())]);
        }

        return (evidence, [.. stages.Select(s => s.ToArray())]);

        int Fault(string name)
        {
            var bad = Math.Pow(10, -3 + 2.5 * random.NextDouble());
            return wear < 0 || random.Next(4) == 0
                ? builder.Add(name, 3, [], [1 - bad, bad * .6, bad * .4])
                : builder.Add(name, 3, [wear], [1 - bad / 5, bad * .1, bad * .1, 1 - bad, bad * .6, bad * .4]);
        }

        int[] Worst(int[] parents, int cut)
        {
            var rows = parents.Aggregate(1, (n, p) => n * builder.States(p));
            var table = new int[rows];
            for (var r = 0; r < rows; r++)
            {
                var rest = r;
                for (var i = parents.Length - 1; i >= 0; i--)
                {
                    var states = builder.States(parents[i]);
                    table[r] = i == cut ? table[r] : Math.Max(table[r], rest % states);
                    rest /= states;
                }
            }

            return table;
        }
    }
}
