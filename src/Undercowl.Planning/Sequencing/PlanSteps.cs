namespace Undercowl.Planning.Sequencing;

/// <summary>Spells a plan out as steps.</summary>
internal static class PlanSteps
{
    // Weight so small that it can only be the rounding of a plan that mends everything.
    private const double Nothing = 1e-12;

    internal static List<PlanStep> Of(FoundPlan plan, RepairOrder order, OrderCost cost, bool[] open)
    {
        if (plan.Begin.Kind == StepKind.Decide) return [plan.Begin];
        var steps = new List<PlanStep>();
        int done = 0;
        if (plan.Begin.Kind == StepKind.SystemTest)
        {
            cost.TestFirst(order, open);
            steps.Add(PlanStep.SystemTest);
        }
        else if (plan.Begin.Kind == StepKind.Action)
        {
            done = cost.ActionFirst(order, open).FirstBlock;
            AddBlock(0, done);
        }

        if (plan.Begin.Kind != StepKind.Refer)
        {
            for (int end = cost.NextTest(done); end > done; end = cost.NextTest(done))
            {
                AddBlock(done, end);
                done = end;
            }
        }

        if (plan.Begin.Kind == StepKind.Refer || order.LeftAfter[done] > Nothing * order.Total) steps.Add(PlanStep.Refer);
        return steps;

        void AddBlock(int from, int to)
        {
            for (int i = from; i < to; i++) steps.Add(PlanStep.Action(order.Actions[i]));
            steps.Add(PlanStep.SystemTest);
        }
    }
}
