namespace Undercowl.Inference;

/// <summary>
/// How a stage's own nodes are summed before they meet the front. None is best for all networks, and what runs over the budget in one
/// way may be a small sum in another.
/// </summary>
/// <param name="Weighted">Of variables that could go next, the one that joins the fewest pairs of others, a pair counting its bits multiplied; else counting one.</param>
/// <param name="Widest">A variable whose elimination is estimated to give more rows than 2 to this power is left for the front, which can shed rows.</param>
internal sealed record SweepWay(bool Weighted, double Widest)
{
    /// <summary>In the order in which they are tried: the last fits most often and has the widest bound.</summary>
    public static IReadOnlyList<SweepWay> All { get; } = [new(false, double.PositiveInfinity), new(true, double.PositiveInfinity), new(false, 17)];
}
