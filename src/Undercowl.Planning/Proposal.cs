namespace Undercowl.Planning;

/// <summary>A step, and what taking it next would mean. Costs are in the problem's unit.</summary>
/// <param name="Step">What to do next.</param>
/// <param name="ExpectedCostToFinish">
/// Expected cost from now to the end of the job if this is the next step and, looking one check ahead, no check follows it: the cost
/// of a policy that can be carried out, so never below the optimum. With <see cref="PlannerOptions.LookAhead"/> checks may follow; in problems
/// too large to be looked through it is then an estimate.
/// </param>
/// <param name="CostNow">
/// What the step itself costs now: set-up, the step with the repairs to be expected of it, and the system test where the
/// plan tests right after it.
/// </param>
/// <param name="Information">
/// For a check, the expected drop in the cost to finish that its answer brings, before its own cost; 0 when
/// the answer could not change anything worth changing. With <see cref="PlannerOptions.LookAhead"/> the drop is against the best other step.
/// 0 for all other steps.
/// </param>
/// <param name="ProbabilityOfHelp">
/// Action: the probability that it mends something broken. Check: that its answer changes what to do next. System test:
/// that it passes. A decision and refer: 0.
/// </param>
/// <param name="ProbabilityOfCure">The probability that the system test right after the step passes; 0 for a check and for refer.</param>
public sealed record Proposal(
    PlanStep Step,
    double ExpectedCostToFinish,
    double CostNow,
    double Information,
    double ProbabilityOfHelp,
    double ProbabilityOfCure);
