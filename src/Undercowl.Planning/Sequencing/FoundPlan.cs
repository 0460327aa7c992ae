namespace Undercowl.Planning.Sequencing;

/// <summary>A plan without checks that was found and is kept: how it begins, its order of actions, and its cost.</summary>
/// <param name="Begin">The first step.</param>
/// <param name="Actions">The order of actions, possibly longer than the part worth carrying out.</param>
/// <param name="Cost">Expected cost from now to the end.</param>
internal sealed record FoundPlan(PlanStep Begin, int[] Actions, double Cost);
