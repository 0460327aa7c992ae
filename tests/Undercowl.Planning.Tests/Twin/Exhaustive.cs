namespace Undercowl.Planning.Tests.Twin;

/// <summary>Costs found by trying everything, or by following a given plan world by world.</summary>
internal static class Exhaustive
{
    /// <summary>The least expected cost of any policy, with checks at any time or with none.</summary>
    internal static double Optimum(Worlds state, bool checks)
    {
        if (state.All.Length == 0) return 0;
        double best = state.Refer();
        bool pays = state.Problem.Decisions.Cost.Any(c => c < 0);
        for (int d = 0; d < state.Problem.Decisions.Count; d++) best = Math.Min(best, state.Decide(d));
        if (state.AnyMet)
        {
            (double cost, Worlds failed) = state.Test();
            if (pays || cost < best) best = Math.Min(best, cost + Optimum(failed, checks));
        }

        for (int a = 0; a < state.Problem.Actions.Cost.Length; a++)
        {
            if (!state.MayAct(a)) continue;
            (double cost, Worlds done) = state.Act(a);
            if (pays || cost < best) best = Math.Min(best, cost + Optimum(done, checks));
        }

        for (int k = 0; checks && k < state.Problem.Checks.Cost.Length; k++)
        {
            if (!state.MayAsk(k)) continue;
            (double cost, Worlds[] outcomes) = state.Ask(k);
            if (pays || cost < best) best = Math.Min(best, cost + outcomes.Sum(o => Optimum(o, checks)));
        }

        return best;
    }

    /// <summary>The least expected cost of any policy that begins with the step and makes no check after it.</summary>
    internal static double OptimumAfter(Worlds state, PlanStep step)
    {
        switch (step.Kind)
        {
            case StepKind.Refer:
                return state.Refer();
            case StepKind.SystemTest:
                (double tested, Worlds failed) = state.Test();
                return tested + Optimum(failed, checks: false);
            case StepKind.Action:
                (double acted, Worlds done) = state.Act(step.Index);
                return acted + Optimum(done, checks: false);
            default:
                (double asked, Worlds[] outcomes) = state.Ask(step.Index);
                return asked + outcomes.Sum(o => Optimum(o, checks: false));
        }
    }

    /// <summary>What a plan without checks costs when carried out as written.</summary>
    internal static double Follow(Worlds state, IEnumerable<PlanStep> steps)
    {
        double total = 0;
        foreach (PlanStep step in steps)
        {
            if (step.Kind == StepKind.Refer)
            {
                total += state.Refer();
                state = state with { All = [] };
                continue;
            }

            (double cost, state) = step.Kind == StepKind.SystemTest ? state.Test() : state.Act(step.Index);
            total += cost;
        }

        // A plan may stop only when nothing is left to stop with.
        Assert.True(state.Weight < 1e-9, "the plan ends with the goal not met and the job not referred");
        return total;
    }

    /// <summary>Cost of actions in the given order with a system test after each, and refer at the end.</summary>
    internal static double Order(TroubleshootingProblem problem, params int[] actions)
    {
        IEnumerable<PlanStep> steps = actions.SelectMany(a => new[] { PlanStep.Action(a), PlanStep.SystemTest });
        return Follow(Worlds.Start(problem), steps.Append(PlanStep.Refer));
    }

    internal static IEnumerable<int[]> Orders(int count)
    {
        if (count == 0) return [[]];
        return Orders(count - 1).SelectMany(rest =>
            Enumerable.Range(0, count).Select(at => (int[])[.. rest[..at], count - 1, .. rest[at..]]));
    }
}
