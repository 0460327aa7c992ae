namespace Undercowl.Inference;

/// <summary>What went wrong, for callers that branch on it.</summary>
public enum InferenceFault
{
    /// <summary>A network was described wrongly: a row, a parent, a name, a number of states.</summary>
    Network,

    /// <summary>A finding does not fit its network: no such node or state, a likelihood that is negative or not a number.</summary>
    Evidence,

    /// <summary>The findings cannot all be true, so nothing has a probability given them.</summary>
    Impossible,

    /// <summary>The exact sum needs more rows than the budget allows.</summary>
    RowBudget,

    /// <summary>A probability left the range of a double although it is not zero.</summary>
    Range,
}

/// <summary>
/// The one error of this project. The message names the node or finding in the caller's own words and says how to
/// mend it. It is not used for the expected outcome "these findings contradict each other", which
/// <see cref="Posterior.Possible"/> reports; only asking such a posterior for a probability raises it.
/// </summary>
public sealed class InferenceException(InferenceFault fault, string message) : Exception(message)
{
    public InferenceFault Fault { get; } = fault;

    /// <summary>For the row-budget fault: the variables of the table that did not fit.</summary>
    internal IReadOnlyList<int> Variables { get; init; } = [];
}
