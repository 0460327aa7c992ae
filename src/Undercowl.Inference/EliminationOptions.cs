namespace Undercowl.Inference;

/// <summary>How the next variable to sum out is chosen. All give the same answer; they differ in rows.</summary>
public enum EliminationOrder
{
    /// <summary>Along the arrows, so that tables hold only joint states that can occur.</summary>
    Causal,

    /// <summary>The variable whose bucket is estimated to give the fewest rows, from the actual sparse sizes.</summary>
    SparseRows,

    /// <summary>The variable whose neighbourhood has the smallest product of states.</summary>
    MinimumWeight,

    /// <summary>The variable that joins the fewest pairs of neighbours which are not joined yet.</summary>
    MinimumFill,

    /// <summary>The variable that joins the least, a pair that is not joined yet counting its bits multiplied; equal ones by rows.</summary>
    WeightedFill,
}

/// <summary>Limits and choices for one elimination. The default asks for exact answers within 16 million rows and products.</summary>
public sealed record EliminationOptions
{
    public static EliminationOptions Default { get; } = new();

    /// <summary>Rows and products of rows, in all, that may be made before the exact sum is given up: about 20 bytes each.</summary>
    public long RowBudget { get; init; } = 16_000_000;

    public EliminationOrder Order { get; init; } = EliminationOrder.Causal;

    /// <summary>
    /// Nodes whose marginals should come out of the same run. Roots that lead to evidence always do; a root that does not
    /// has its prior. Asking later for any other node costs an elimination of its own, because nodes that bear on nothing
    /// are left out and states that no finding can tell apart are merged.
    /// </summary>
    public IReadOnlyList<int> Wanted { get; init; } = [];

    /// <summary>
    /// Nodes that gather like parts of the network one after another (the fold over cylinders: what the first gives, the first
    /// two, and so on); empty when there are none. Where the exact sum does not fit, the parts are summed in this order and
    /// the lightest joint states of what they share are left out, with a bound.
    /// </summary>
    public IReadOnlyList<IReadOnlyList<int>> Stages { get; init; } = [];

    /// <summary>The most joint states that are carried from one stage to the next.</summary>
    public int Beam { get; init; } = 4096;

    /// <summary>When the row budget is exceeded: fall back on a bounded sum (true) or raise the row-budget fault (false).</summary>
    public bool AllowBounded { get; init; } = true;

    /// <summary>
    /// Roots over which the bounded sum enumerates; null starts from none and adds those roots with a state of at least
    /// <see cref="RareMass"/> that stand in the way.
    /// </summary>
    public IReadOnlyList<int>? Rare { get; init; }

    /// <summary>The prior of the dominant state from which a root counts as rare when <see cref="Rare"/> is null.</summary>
    public double RareMass { get; init; } = 0.9;

    /// <summary>The most joint assignments of the rare roots that the bounded sum looks at.</summary>
    public int Assignments { get; init; } = 500;

    /// <summary>The bounded sum stops early once its error bound is at most this.</summary>
    public double TargetError { get; init; } = 1e-9;
}
