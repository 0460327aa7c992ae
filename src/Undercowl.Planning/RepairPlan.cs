namespace Undercowl.Planning;

/// <summary>
/// A fixed order of actions and system tests, followed until a test passes; what is left at the end is referred. It asks
/// no checks, so it is not the best one can do: it is what acting now costs.
/// </summary>
/// <param name="Steps">Actions and system tests in order; the last step is refer unless nothing can be left to refer. Where a decision is cheapest it is the only step.</param>
/// <param name="ExpectedCost">Expected cost of following it from now to the end.</param>
public sealed record RepairPlan(IReadOnlyList<PlanStep> Steps, double ExpectedCost);
