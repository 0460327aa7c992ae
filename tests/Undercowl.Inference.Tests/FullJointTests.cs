namespace Undercowl.Inference.Tests;

/// <summary>Independent: every answer on thousands of random small networks against the full joint multiplied out.</summary>
public sealed class FullJointTests
{
    private static readonly EliminationOrder[] Orders = Enum.GetValues<EliminationOrder>();

    [Fact]
    public void Evidence_and_marginals_equal_the_full_joint()
    {
        int possible = 0, impossible = 0;
        for (var seed = 0; seed < 4000; seed++)
        {
            var c = RandomCases.Make(seed);
            var twin = new FullJoint(c);
            var options = new EliminationOptions
            {
                Order = Orders[seed % Orders.Length],
                Wanted = seed % 2 == 0 ? [] : [.. Enumerable.Range(0, c.Network.Count)],
            };
            var posterior = Elimination.Run(c.Evidence, options);
            Assert.Equal(twin.Total > 0, posterior.Possible);
            Assert.Equal(0, posterior.ErrorBound);
            if (twin.Total == 0)
            {
                impossible++;
                Assert.Equal(double.NegativeInfinity, posterior.LogEvidence);
                Assert.Equal(InferenceFault.Impossible, Assert.Throws<InferenceException>(() => posterior.Marginal(0).ToArray()).Fault);
                continue;
            }

            possible++;
            Near.Equal(Math.Log(twin.Total), posterior.LogEvidence, Near.Exact, $"seed {seed} ln P(e)");
            for (var v = 0; v < c.Network.Count; v++)
                Near.Equal(twin.Joint(v), posterior.Marginal(v), Near.Exact, $"seed {seed} node {v}");
        }

        // The generator must not drift into giving only one kind.
        Assert.True(possible > 1500 && impossible > 300, $"{possible} possible, {impossible} impossible");
    }

    [Fact]
    public void Joints_equal_the_full_joint_in_any_order_of_nodes()
    {
        for (var seed = 10_000; seed < 11_500; seed++)
        {
            var c = RandomCases.Make(seed, 9, 4000);
            var twin = new FullJoint(c);
            if (twin.Total == 0)
                continue;
            var random = new Random(seed);
            var nodes = Enumerable.Range(0, c.Network.Count).OrderBy(_ => random.Next()).Take(random.Next(1, 5)).ToArray();
            Near.Equal(twin.Joint(nodes), Elimination.Run(c.Evidence).Joint(nodes), Near.Exact, $"seed {seed}");
        }
    }
}
