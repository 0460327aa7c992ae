namespace Undercowl.Inference.Tests;

/// <summary>Derived: totals far outside the range of a double, from products that can be written down.</summary>
public sealed class ScaleTests
{
    [Theory]
    [InlineData(1e-30)]
    [InlineData(1e-3)]
    [InlineData(1e30)]
    public void A_thousand_readings_of_one_node_keep_their_total(double scale)
    {
        var builder = new NetworkBuilder();
        var node = builder.Add("node", 2, [], [0.5, 0.5]);
        var evidence = new Evidence(builder.Build());
        for (var i = 0; i < 1000; i++)
            evidence.Likelihood(node, [scale, scale * 1.01]);
        var posterior = Elimination.Run(evidence);
        // ln(scale^1000 (1 + 1.01^1000) / 2).
        var expected = 1000 * Math.Log(scale) + Math.Log(.5) + Math.Log(1 + Math.Pow(1.01, 1000));
        Near.Equal(expected, posterior.LogEvidence, 1e-12, "ln P(e)");
        Near.Equal(1 / (1 + Math.Pow(1.01, 1000)), posterior.Marginal(node)[0], 1e-12, "posterior");
    }

    [Fact]
    public void A_thousand_readings_for_a_state_and_a_thousand_against_it_cancel()
    {
        var builder = new NetworkBuilder();
        var node = builder.Add("node", 2, [], [0.75, 0.25]);
        var evidence = new Evidence(builder.Build());
        for (var i = 0; i < 2000; i++)
            evidence.Likelihood(node, i < 1000 ? [1, 1e-3] : [1e-3, 1]);
        foreach (var posterior in new[] { Elimination.Run(evidence), Elimination.Bounded(evidence, new EliminationOptions { Rare = [node] }) })
        {
            Near.Equal(-3000 * Math.Log(10), posterior.LogEvidence, 1e-12, "ln P(e)");
            Near.Equal(.25, posterior.Marginal(node)[1], 1e-9, "posterior");
        }
    }

    [Fact]
    public void Evidence_of_1e_minus_300_over_separate_nodes_keeps_its_posteriors()
    {
        var builder = new NetworkBuilder();
        for (var i = 0; i < 100; i++)
        {
            var cause = builder.Add($"cause {i}", 2, [], [.999, .001]);
            builder.Add($"effect {i}", 2, [cause], [1, 0, 0, 1]);
        }

        var evidence = new Evidence(builder.Build());
        for (var i = 0; i < 100; i++)
            evidence.Observe(2 * i + 1, 1);
        var posterior = Elimination.Run(evidence);
        Near.Equal(100 * Math.Log(.001), posterior.LogEvidence, 1e-12, "ln P(e)");
        Assert.Equal(1, posterior.Marginal(0)[1]);
    }

    [Fact]
    public void A_chain_multiplied_up_to_1e44_and_down_again_keeps_its_posteriors()
    {
        var builder = new NetworkBuilder();
        var first = builder.Add("n0", 2, [], [.5, .5]);
        for (int i = 1, previous = first; i < 400; i++)
            previous = builder.Add($"n{i}", 2, [previous], [.9, .1, .1, .9]);
        var evidence = new Evidence(builder.Build());
        for (var i = 0; i < 400; i++)
            evidence.Likelihood(i, i < 200 ? [1e3, 1e3] : [1e-5, 1e-5]);
        var posterior = Elimination.Run(evidence);
        Near.Equal(200 * Math.Log(1e3) + 200 * Math.Log(1e-5), posterior.LogEvidence, 1e-12, "ln P(e)");
        Near.Equal(.5, posterior.Marginal(200)[0], 1e-12, "posterior");
    }

    [Fact]
    public void A_scope_far_wider_than_any_packed_key_is_no_trouble()
    {
        // 200 copies of one node read one root: their joint table has 200 variables and two rows.
        var builder = new NetworkBuilder();
        var root = builder.Add("root", 2, [], [.7, .3]);
        var copies = new int[200];
        for (var i = 0; i < copies.Length; i++)
            copies[i] = builder.AddFunction($"copy {i}", 2, [root], [0, 1]);
        var network = builder.Build();
        var evidence = new Evidence(network);
        for (var i = 0; i + 1 < copies.Length; i += 2)
            evidence.Likelihood([copies[i], copies[i + 1]], [1, .5, .5, 1.01]);
        var posterior = Elimination.Run(evidence);
        var odds = .3 / .7 * Math.Pow(1.01, 100);
        Near.Equal(odds / (1 + odds), posterior.Marginal(root)[1], 1e-12, "posterior");
    }
}
