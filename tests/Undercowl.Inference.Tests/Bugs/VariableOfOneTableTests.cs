namespace Undercowl.Inference.Tests.Bugs;

/// <summary>
/// The bug: a variable that one table alone had was never summed out along the arrows, because joining a single table gave
/// it back as it was; the same variable stayed the cheapest, without end.
/// </summary>
public sealed class VariableOfOneTableTests
{
    /// <summary>Each takes well under a millisecond; a run that has not ended by then never will.</summary>
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(20);

    [Theory]
    [InlineData(EliminationOrder.Causal)]
    [InlineData(EliminationOrder.SparseRows)]
    [InlineData(EliminationOrder.MinimumWeight)]
    [InlineData(EliminationOrder.MinimumFill)]
    public void A_root_that_only_a_reading_bears_on_ends(EliminationOrder order)
    {
        var builder = new NetworkBuilder();
        var root = builder.Add("root", 2, [], [0.75, 0.25]);
        var evidence = new Evidence(builder.Build());
        evidence.Likelihood(root, [0.1, 0.9]);
        var posterior = Ends(() => Elimination.Run(evidence, new EliminationOptions { Order = order }));
        // Derived: .25 x .9 / (.75 x .1 + .25 x .9).
        Near.Equal(0.75, posterior.Marginal(root)[1], 1e-15);
    }

    [Theory]
    [InlineData(EliminationOrder.Causal)]
    [InlineData(EliminationOrder.SparseRows)]
    [InlineData(EliminationOrder.MinimumWeight)]
    [InlineData(EliminationOrder.MinimumFill)]
    public void A_node_left_alone_beside_one_that_is_kept_ends(EliminationOrder order)
    {
        // The kept root may not be summed out; its chance child, read by nothing, must be.
        var builder = new NetworkBuilder();
        var kept = builder.Add("kept", 2, [], [0.5, 0.5]);
        var child = builder.Add("child", 2, [kept], [0.9, 0.1, 0.2, 0.8]);
        var evidence = new Evidence(builder.Build());
        evidence.Likelihood(child, [0, 1]);
        var found = Ends(() => MostProbable.Explanations(evidence, [kept], 1, new EliminationOptions { Order = order }));
        Assert.Equal([1], found[0].States);
        // Derived: .5 x .8 / (.5 x .1 + .5 x .8).
        Near.Equal(8 / 9.0, found[0].Probability, 1e-15);
    }

    private static T Ends<T>(Func<T> run)
        where T : class
    {
        T? result = null;
        Exception? fault = null;
        var thread = new Thread(() =>
        {
            try
            {
                result = run();
            }
            catch (InferenceException e)
            {
                fault = e;
            }
        })
        { IsBackground = true };
        thread.Start();
        Assert.True(thread.Join(Patience), "It does not end.");
        Assert.Null(fault);
        return result!;
    }
}
