namespace Undercowl.Inference.Tests;

/// <summary>Independent: a circuit re-run with other numbers against the full joint, and against running from scratch.</summary>
public sealed class CircuitTests
{
    [Fact]
    public void A_circuit_with_changed_likelihoods_equals_the_full_joint_with_them()
    {
        int changed = 0, becameImpossible = 0;
        for (var seed = 60_000; seed < 61_000; seed++)
        {
            var c = RandomCases.Make(seed, 8, 2000);
            Circuit circuit = Circuit.Compile(c.Evidence);
            var random = new Random(seed);
            for (var round = 0; round < 3; round++)
            {
                var now = new Case(c.Network);
                foreach (var (v, s) in c.Forced)
                    now.Intervene(v, s);
                for (var f = 0; f < c.Likelihoods.Count; f++)
                {
                    var (scope, dense) = c.Likelihoods[f];
                    // Observed states are one-hot and stay; the generator gives likelihoods more than one number above 0.
                    if (!IsObserved(c, f))
                    {
                        dense = RandomCases.Positive(random, dense.Length, 0.3);
                        circuit.SetLikelihood(f, dense);
                        changed++;
                    }

                    now.Likelihood(scope, dense);
                }

                circuit.Propagate();
                var twin = new FullJoint(now);
                Assert.Equal(twin.Total > 0, circuit.Possible);
                if (twin.Total == 0)
                {
                    becameImpossible++;
                    continue;
                }

                Near.Equal(Math.Log(twin.Total), circuit.LogEvidence, Near.Exact, $"seed {seed} round {round}");
                for (var v = 0; v < c.Network.Count; v++)
                {
                    if (c.Network.Parents(v).IsEmpty && Leads(c, v))
                        Near.Equal(twin.Joint(v), circuit.Marginal(v), Near.Exact, $"seed {seed} round {round} node {v}");
                }
            }
        }

        Assert.True(changed > 2000 && becameImpossible > 20, $"{changed} changed, {becameImpossible} impossible");
    }

    [Fact]
    public void Propagating_again_allocates_nothing()
    {
        var c = RandomCases.Make(60_007, 8, 2000);
        var circuit = Circuit.Compile(c.Evidence);
        for (var i = 0; i < 50; i++)
            circuit.Propagate();
        var before = GC.GetAllocatedBytesForCurrentThread();
        for (var i = 0; i < 100; i++)
            circuit.Propagate();
        Assert.Equal(0, GC.GetAllocatedBytesForCurrentThread() - before);
    }

    [Fact]
    public void Setting_an_observed_state_or_reading_before_propagating_is_refused()
    {
        var builder = new NetworkBuilder();
        var a = builder.Add("a", 2, [], [0.5, 0.5]);
        var b = builder.Add("b", 2, [a], [0.9, 0.1, 0.2, 0.8]);
        var evidence = new Evidence(builder.Build());
        var seen = evidence.Observe(b, 1);
        var soft = evidence.Likelihood(a, [1, 2]);
        var circuit = Circuit.Compile(evidence);
        Assert.Equal(InferenceFault.Evidence, Assert.Throws<InferenceException>(() => circuit.SetLikelihood(seen, [0, 1])).Fault);
        circuit.SetLikelihood(soft, [1, 1]);
        Assert.Throws<InvalidOperationException>(() => circuit.Marginal(a).ToArray());
        circuit.Propagate();
        // Derived: .5 x .8 / (.5 x .8 + .5 x .1).
        Near.Equal(8 / 9.0, circuit.Marginal(a)[1], 1e-15);
    }

    private static bool IsObserved(Case c, int finding)
    {
        try
        {
            Circuit.Compile(c.Evidence).SetLikelihood(finding, c.Likelihoods[finding].Dense);
            return false;
        }
        catch (InferenceException)
        {
            return true;
        }
    }

    /// <summary>Whether a finding lies on the node or below it, arrows into forced nodes cut.</summary>
    private static bool Leads(Case c, int node)
    {
        var below = new bool[c.Network.Count];
        below[node] = true;
        for (var v = node + 1; v < below.Length; v++)
            below[v] = !c.Forced.ContainsKey(v) && c.Network.Parents(v).ToArray().Any(p => below[p]);
        return c.Likelihoods.Any(l => l.Scope.Any(v => below[v]));
    }
}
