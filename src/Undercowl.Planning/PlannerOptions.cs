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
    /// Count on more checks after the next one: numbers that may be touched in looking further than one check ahead. Once
    /// begun, every step is looked at as narrowly as can be; what is left goes into looking more widely. Costs to finish are then
    /// those of a policy, or, in problems too large to be looked through, estimates. 0: look one check ahead. It
    /// does not count as work of the <see cref="WorkBudget"/>, and nothing is looked into further once that leaves a step out.
    /// </summary>
    public long LookAhead { get; init; }
}
