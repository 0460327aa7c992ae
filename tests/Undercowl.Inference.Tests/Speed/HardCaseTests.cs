namespace Undercowl.Inference.Tests.Speed;

/// <summary>
/// The shape that hurts most (see <see cref="LaneNetwork"/>): 8 lanes, 155 uncertain roots and 6 activations, 8 set-ups, 3 swaps
/// chaining four lanes, fresh versions, random intermittents on 3 occasions, and a noisy reading of the fold in 4 set-ups.
/// Recorded bounds with room to spare; the measured figures are in docs/decisions/inference-form.md.
/// </summary>
public sealed class HardCaseTests(ITestOutputHelper output)
{
    [Theory]
    [InlineData(1)]
    public void Four_readings_of_the_fold_are_exact_within_the_default_budget(int seed)
    {
        var lanes = new LaneNetwork(new LaneShape { Seed = seed });
        var posterior = Elimination.Run(lanes.Evidence);
        output.WriteLine($"{lanes.Network.Count} nodes, {posterior.Rows} rows, {posterior.Products} products, largest {posterior.LargestTable}");
        Assert.Equal(0, posterior.ErrorBound);
        Assert.InRange(lanes.Roots, 152, 170);
        Assert.True(posterior.Products < 3_000_000, $"{posterior.Products} products");
    }

    [Fact]
    public void Twenty_odd_findings_in_eight_set_ups_stay_under_a_tenth_of_a_million_rows()
    {
        var lanes = new LaneNetwork(new LaneShape { FoldReadings = 1, LaneReadings = 3 });
        var posterior = Elimination.Run(lanes.Evidence);
        output.WriteLine($"{lanes.Evidence.Count} findings, {posterior.Rows} rows, {posterior.Products} products");
        Assert.True(posterior.Products < 300_000, $"{posterior.Products} products");
    }

    /// <summary>Independent: another elimination order, which shares no choice of what to join with the causal one.</summary>
    [Fact]
    public void A_smaller_case_of_the_same_shape_agrees_with_the_classical_order()
    {
        var lanes = new LaneNetwork(new LaneShape { Lanes = 6, Private = 5, SetUps = 4, FoldReadings = 2, LaneReadings = 6 });
        var causal = Elimination.Run(lanes.Evidence);
        var classical = Elimination.Run(lanes.Evidence, new EliminationOptions { Order = EliminationOrder.SparseRows });
        output.WriteLine($"{causal.Products} and {classical.Products} products");
        Near.Equal(classical.LogEvidence, causal.LogEvidence, Near.Exact, "ln P(e)");
        for (var v = 0; v < lanes.Network.Count; v++)
        {
            if (lanes.Network.Parents(v).IsEmpty)
                Near.Equal(classical.Marginal(v), causal.Marginal(v), Near.Exact, lanes.Network.Name(v));
        }
    }
}
