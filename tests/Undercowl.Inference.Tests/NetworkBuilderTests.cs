namespace Undercowl.Inference.Tests;

public sealed class NetworkBuilderTests
{
    [Fact]
    public void A_row_printed_to_seven_digits_is_brought_to_one()
    {
        // Three thirds to seven digits sum to .9999999: the published ALARM tables have such rows.
        var builder = new NetworkBuilder();
        var node = builder.Add("node", 3, [], [.3333333, .3333333, .3333333]);
        var posterior = Elimination.Run(new Evidence(builder.Build()));
        Near.Equal(1 / 3.0, posterior.Marginal(node)[0], 1e-15);
        Near.Equal(0, posterior.LogEvidence, 1e-15);
    }

    [Theory]
    [InlineData(.5, .4999)]
    [InlineData(.6, .6)]
    [InlineData(1.1, -.1)]
    [InlineData(double.NaN, 1)]
    [InlineData(double.PositiveInfinity, 0)]
    public void A_row_that_is_no_distribution_is_refused_by_name(double a, double b)
    {
        var builder = new NetworkBuilder();
        var parent = builder.Add("parent", 2, [], [.5, .5]);
        var error = Assert.Throws<InferenceException>(() => builder.Add("lamp", 2, [parent], [.5, .5, a, b]));
        Assert.Equal(InferenceFault.Network, error.Fault);
        Assert.Contains("'lamp'", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Wrong_shapes_parents_names_and_states_are_refused()
    {
        var builder = new NetworkBuilder();
        var a = builder.Add("a", 2, [], [.5, .5]);
        Refused(() => builder.Add("a", 2, [], [.5, .5]), "already");
        Refused(() => builder.Add("b", 2, [7], [.5, .5]), "does not exist");
        Refused(() => builder.Add("b", 2, [a, a], [.5, .5, .5, .5, .5, .5, .5, .5]), "twice");
        Refused(() => builder.Add("b", 2, [a], [.5, .5]), "needs 4", "need 4");
        Refused(() => builder.Add("b", ["x", "x"], [], [.5, .5]), "called 'x'");
        Refused(() => builder.Add("b", 0, [], []), "1 to 256");
        Refused(() => builder.AddFunction("b", 2, [a], [0, 2]), "outside 0 to 1");
        Refused(() => builder.AddFunction("b", 2, [a], [0]), "2 parent configurations");
        Refused(() => builder.AddSparse("b", ["x", "y"], [a], [0], [1], [1]), "sum to 0");
        Refused(() => builder.AddSparse("b", ["x", "y"], [a], [0, 0, 1], [1, 1, 0], [.5, .5, 1]), "twice");
        Assert.Equal(1, builder.Count);
    }

    [Fact]
    public void Dense_function_and_sparse_descriptions_make_the_same_network()
    {
        double[] Table(Func<NetworkBuilder, int, int, int> add)
        {
            var builder = new NetworkBuilder();
            var a = builder.Add("a", 2, [], [.5, .5]);
            var b = builder.Add("b", 3, [], [.2, .3, .5]);
            var c = add(builder, a, b);
            return builder.Build().DenseTable(c);
        }

        var dense = Table((n, a, b) => n.Add("c", 2, [a, b], [1, 0, 0, 1, 1, 0, 0, 1, 0, 1, 1, 0]));
        Assert.Equal(dense, Table((n, a, b) => n.AddFunction("c", 2, [a, b], [0, 1, 0, 1, 1, 0])));
        Assert.Equal(dense, Table((n, a, b) => n.AddSparse("c", ["0", "1"], [a, b], [5, 4, 3, 2, 1, 0], [0, 1, 1, 0, 1, 0], [1, 1, 1, 1, 1, 1])));
    }

    [Fact]
    public void Findings_that_do_not_fit_are_refused()
    {
        var builder = new NetworkBuilder();
        var a = builder.Add("a", 2, [], [.5, .5]);
        var evidence = new Evidence(builder.Build());
        Action[] wrong =
        [
            () => evidence.Observe(3, 0),
            () => evidence.Observe(a, 2),
            () => evidence.Intervene(a, -1),
            () => evidence.Likelihood(a, [1]),
            () => evidence.Likelihood(a, [1, -1]),
            () => evidence.Likelihood(a, [1, double.NaN]),
            () => evidence.Likelihood(a, [1, double.PositiveInfinity]),
            () => evidence.Likelihood([a, a], [1, 1, 1, 1]),
            () => evidence.Likelihood([], []),
        ];
        foreach (var action in wrong)
            Assert.Equal(InferenceFault.Evidence, Assert.Throws<InferenceException>(action).Fault);
        Assert.Equal(0, evidence.Count);
    }

    /// <summary>The example of the project's README, as it stands there. Derived: .2 x .8 / (.2 x .8 + .8 x .1).</summary>
    [Fact]
    public void The_readme_example_compiles_and_is_right()
    {
        var builder = new NetworkBuilder();
        var rain = builder.Add("rain", 2, [], [0.8, 0.2]);
        var wet = builder.Add("wet", 2, [rain], [0.9, 0.1, 0.2, 0.8]);
        var evidence = new Evidence(builder.Build());
        evidence.Observe(wet, 1, "grass is wet");
        var posterior = Elimination.Run(evidence);
        Near.Equal(2 / 3.0, posterior.Marginal(rain)[1], 1e-15);
    }

    private static void Refused(Action action, params string[] anyOf)
    {
        var error = Assert.Throws<InferenceException>(action);
        Assert.Equal(InferenceFault.Network, error.Fault);
        Assert.Contains(anyOf, text => error.Message.Contains(text, StringComparison.Ordinal));
    }
}
