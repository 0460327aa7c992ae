namespace Undercowl.Planning;

/// <summary>A step, and what taking it next would mean. Costs are in the problem's unit.</summary>
/// <param name="Step">What to do next.</param>
/// <param name="ExpectedCostToFinish">
/// Expected cost from now to the end of the job if this is the next step and no check follows it: the cost of a policy that
/// can be carried out, so never below the optimum, and often above what replanning after each step will really cost.
/// </param>
/// <param name="CostNow">
/// What the step itself costs now: set-up, the step with the repairs to be expected of it, and the system test where the
/// plan tests right after it.
/// </param>
/// <param name="Information">
/// For a check, the expected drop in the cost to finish that its answer brings, before its own cost; 0 when
/// the answer could not change anything worth changing. 0 for all other steps.
/// </param>
/// <param name="ProbabilityOfHelp">
/// Action: the probability that it mends something broken. Check: that its answer changes what to do next. System test:
/// that it passes. Refer: 0.
/// </param>
/// <param name="ProbabilityOfCure">The probability that the system test right after the step passes; 0 for a check and for refer.</param>
public sealed record Proposal(
    PlanStep Step,
    double ExpectedCostToFinish,
    double CostNow,
    double Information,
    double ProbabilityOfHelp,
    double ProbabilityOfCure);
