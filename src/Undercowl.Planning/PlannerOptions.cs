namespace Undercowl.Planning;

/// <summary>How much a planner may do. It is not part of the problem: no option changes what a plan costs.</summary>
public sealed record PlannerOptions
{
    /// <summary>
    /// Numbers a ranking may touch before it leaves the remaining steps unranked and names them. Checked between steps, so
    /// it may be passed by the work of one step. The default is no limit; 0 or less still ranks the best repair and refer.
    /// </summary>
    public long WorkBudget { get; init; } = long.MaxValue;
}
