using CsCheck;

namespace Undercowl.Inference.Tests;

/// <summary>Properties that hold whatever the right answer is; cases come from CsCheck, which prints the seed of a failure.</summary>
public sealed class InvarianceTests
{
    private static readonly Gen<int> Seeds = Gen.Int[100_000, 200_000];

    [Fact]
    public void The_order_of_findings_does_not_matter() => Seeds.Sample(
        seed =>
        {
            var c = RandomCases.Make(seed, 9, 4000);
            var reversed = new Case(c.Network);
            foreach (var (v, s) in c.Forced)
                reversed.Intervene(v, s);
            foreach (var (scope, dense) in Enumerable.Reverse(c.Likelihoods))
                reversed.Likelihood(scope, dense);
            Same(Elimination.Run(c.Evidence), Elimination.Run(reversed.Evidence), v => v);
        },
        iter: 400);

    [Fact]
    public void A_likelihood_of_ones_changes_nothing_and_its_scale_only_the_evidence() => Seeds.Sample(
        seed =>
        {
            var c = RandomCases.Make(seed, 9, 4000);
            var before = Elimination.Run(c.Evidence);
            var v = seed % c.Network.Count;
            c.Evidence.Likelihood(v, [.. Enumerable.Repeat(8.0, c.Network.States(v))]);
            var after = Elimination.Run(c.Evidence);
            Assert.Equal(before.Possible, after.Possible);
            if (!before.Possible)
                return;
            Near.Equal(before.LogEvidence + Math.Log(8), after.LogEvidence, Near.Exact);
            for (var u = 0; u < c.Network.Count; u++)
                Near.Equal(before.Marginal(u), after.Marginal(u), Near.Exact, $"node {u}");
        },
        iter: 400);

    [Fact]
    public void Relabelling_nodes_and_states_relabels_the_answer() => Seeds.Sample(
        seed =>
        {
            var c = RandomCases.Make(seed, 8, 2000);
            var random = new Random(seed);
            var (relabelled, place, state) = Relabel(c, random);
            var before = Elimination.Run(c.Evidence);
            var after = Elimination.Run(relabelled.Evidence);
            Assert.Equal(before.Possible, after.Possible);
            if (!before.Possible)
                return;
            Near.Equal(before.LogEvidence, after.LogEvidence, Near.Exact);
            for (var v = 0; v < c.Network.Count; v++)
            {
                for (var s = 0; s < c.Network.States(v); s++)
                    Near.Equal(before.Marginal(v)[s], after.Marginal(place[v])[state[v][s]], Near.Exact, $"node {v} state {s}");
            }
        },
        iter: 300);

    /// <summary>A random order that keeps parents first, and a random permutation of every node's states.</summary>
    private static (Case Case, int[] Place, int[][] State) Relabel(Case c, Random random)
    {
        var n = c.Network.Count;
        var state = new int[n][];
        for (var v = 0; v < n; v++)
            state[v] = [.. Enumerable.Range(0, c.Network.States(v)).OrderBy(_ => random.Next())];
        var place = new int[n];
        Array.Fill(place, -1);
        var builder = new NetworkBuilder();
        while (builder.Count < n)
        {
            var ready = Enumerable.Range(0, n).Where(u => place[u] < 0 && c.Network.Parents(u).ToArray().All(p => place[p] >= 0)).ToArray();
            var v = ready[random.Next(ready.Length)];
            var parents = c.Network.Parents(v).ToArray();
            int[] scope = [.. parents, v];
            place[v] = builder.Add(c.Network.Name(v), c.Network.States(v), [.. parents.Select(p => place[p])], Permute(c.Network, scope, state, c.Network.DenseTable(v)));
        }

        var relabelled = new Case(builder.Build());
        foreach (var (v, s) in c.Forced)
            relabelled.Intervene(place[v], state[v][s]);
        foreach (var (scope, dense) in c.Likelihoods)
            relabelled.Likelihood([.. scope.Select(v => place[v])], Permute(c.Network, scope, state, dense));
        return (relabelled, place, state);
    }

    private static double[] Permute(Network network, int[] scope, int[][] state, double[] dense)
    {
        var permuted = new double[dense.Length];
        for (var i = 0; i < dense.Length; i++)
        {
            int rest = i, index = 0, stride = 1;
            for (var k = scope.Length - 1; k >= 0; k--)
            {
                var states = network.States(scope[k]);
                index += state[scope[k]][rest % states] * stride;
                stride *= states;
                rest /= states;
            }

            permuted[index] = dense[i];
        }

        return permuted;
    }

    private static void Same(Posterior a, Posterior b, Func<int, int> map)
    {
        Assert.Equal(a.Possible, b.Possible);
        if (!a.Possible)
            return;
        Near.Equal(a.LogEvidence, b.LogEvidence, Near.Exact);
        for (var v = 0; v < a.Network.Count; v++)
            Near.Equal(a.Marginal(v), b.Marginal(map(v)), Near.Exact, $"node {v}");
    }
}
