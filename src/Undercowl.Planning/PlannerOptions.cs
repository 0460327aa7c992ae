namespace Undercowl.Planning;

/// <summary>How much a planner may do and how far it looks. It is not part of the problem.</summary>
public sealed record PlannerOptions
{
    /// <summary>
    /// Numbers a ranking may touch before it leaves the remaining steps unranked and names them. Checked between steps, so
    /// it may be passed by the work of one step. The default is no limit; 0 or less still ranks the best repair and refer.
    /// </summary>
    public long WorkBudget { get; init; } = long.MaxValue;

    /// <summary>
    /// Count on more checks after the next one: what is left unknown after a step is then priced at what the checks on hand ask
    /// per bit, where that is cheaper than acting without them. Costs to finish are then estimates, not those of a plan that is
    /// laid out, and no longer bounds. Off unless asked for.
    /// </summary>
    public bool Foresight { get; init; }
}
