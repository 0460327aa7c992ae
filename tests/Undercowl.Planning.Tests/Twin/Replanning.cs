namespace Undercowl.Planning.Tests.Twin;

/// <summary>What it really costs to take the planner's first proposal, plan again, and so on to the end.</summary>
internal static class Replanning
{
    internal static double Cost(Worlds state, PlannerOptions? options = null)
    {
        if (state.All.Length == 0) return 0;
        PlanStep step = new Planner(options).Rank(Problem(state)).First.Step;
        switch (step.Kind)
        {
            case StepKind.Refer:
                return state.Refer();
            case StepKind.Decide:
                return state.Decide(step.Index);
            case StepKind.SystemTest:
                (double tested, Worlds failed) = state.Test();
                return tested + Cost(failed, options);
            case StepKind.Action:
                (double acted, Worlds done) = state.Act(step.Index);
                return acted + Cost(done, options);
            default:
                (double asked, Worlds[] outcomes) = state.Ask(step.Index);
                return asked + outcomes.Sum(o => Cost(o, options));
        }
    }

    /// <summary>The state as a problem of its own: a hypothesis for each world, and what is spent forbidden.</summary>
    private static TroubleshootingProblem Problem(Worlds state)
    {
        TroubleshootingProblem old = state.Problem;
        int components = old.Hypotheses.Components;
        var rows = new List<double>();
        int start = 0;
        for (int k = 0; k < old.Checks.Cost.Length; k++)
        {
            int outcomes = old.Checks.Outcomes[k];
            foreach (World world in state.All)
            {
                rows.AddRange(old.Checks.OutcomeProbability[(start + world.Hypothesis * outcomes)..][..outcomes]);
            }

            start += outcomes * old.Hypotheses.Weights.Length;
        }

        return new TroubleshootingProblem(
            new HypothesisTable
            {
                Weights = [.. state.All.Select(w => w.Weight)],
                Components = components,
                Broken = [.. state.All.SelectMany(w => Enumerable.Range(0, components).Select(c => (w.Broken >> c & 1) == 1))],
            },
            new ActionTable
            {
                Cost = old.Actions.Cost,
                Success = old.Actions.Success,
                RepairCost = old.Actions.RepairCost,
                Cluster = old.Actions.Cluster,
                Allowed = [.. Enumerable.Range(0, old.Actions.Cost.Length).Select(state.MayAct)],
            },
            new CheckTable
            {
                Cost = old.Checks.Cost,
                Outcomes = old.Checks.Outcomes,
                OutcomeProbability = [.. rows],
                Cluster = old.Checks.Cluster,
                Allowed = [.. Enumerable.Range(0, old.Checks.Cost.Length).Select(state.MayAsk)],
            },
            new ClusterTable
            {
                OpenCost = old.Clusters.OpenCost,
                CloseCost = old.Clusters.CloseCost,
                IsOpen = [.. Enumerable.Range(0, old.Clusters.OpenCost.Length).Select(g => (state.Open >> g & 1) == 1)],
                TestInside = old.Clusters.TestInside,
            },
            old.SystemTestCost,
            old.ReferCost,
            new DecisionTable
            {
                Count = old.Decisions.Count,
                Cost =
                [
                    .. Enumerable.Range(0, old.Decisions.Count)
                        .SelectMany(d => state.All.Select(w => old.Decisions.Cost[d * old.Hypotheses.Weights.Length + w.Hypothesis])),
                ],
            });
    }
}
