namespace Undercowl.Planning.Tests.Twin;

/// <summary>One way things may stand: the hypothesis it came from, the components still broken (bits), and its weight.</summary>
internal readonly record struct World(int Hypothesis, int Broken, double Weight);

/// <summary>
/// The state of a job, spelled out world by world and step by step with no shortcut: the slow twin of the planner's sums.
/// Costs are totals over the worlds' weights, so a branch needs no dividing.
/// </summary>
internal sealed record Worlds(TroubleshootingProblem Problem, World[] All, int Tried, int Asked, int Open)
{
    internal static Worlds Start(TroubleshootingProblem problem)
    {
        HypothesisTable table = problem.Hypotheses;
        var worlds = new List<World>();
        for (int h = 0; h < table.Weights.Length; h++)
        {
            int broken = 0;
            for (int c = 0; c < table.Components; c++)
            {
                if (table.Broken[h * table.Components + c]) broken |= 1 << c;
            }

            if (table.Weights[h] > 0) worlds.Add(new World(h, broken, table.Weights[h]));
        }

        int open = 0;
        for (int g = 0; g < problem.Clusters.IsOpen.Length; g++)
        {
            if (problem.Clusters.IsOpen[g]) open |= 1 << g;
        }

        return new Worlds(problem, [.. worlds], 0, 0, open);
    }

    internal double Weight => All.Sum(w => w.Weight);

    internal bool AnyMet => All.Any(w => w.Broken == 0);

    internal double Refer() => Problem.ReferCost * Weight;

    internal double Decide(int decision) => All.Sum(w => w.Weight * Problem.Decisions.Cost[decision * Problem.Hypotheses.Weights.Length + w.Hypothesis]);

    internal (double Cost, Worlds Failed) Test()
    {
        ClusterTable clusters = Problem.Clusters;
        double cost = Problem.SystemTestCost;
        int open = Open;
        for (int g = 0; g < clusters.OpenCost.Length; g++)
        {
            if ((Open >> g & 1) == 0 || clusters.TestInside[g]) continue;
            cost += clusters.CloseCost[g];
            open &= ~(1 << g);
        }

        return (cost * Weight, this with { All = [.. All.Where(w => w.Broken != 0)], Open = open });
    }

    internal (double Cost, Worlds Done) Act(int action)
    {
        ActionTable actions = Problem.Actions;
        int components = Problem.Hypotheses.Components;
        (double cost, int open) = SetUp(actions.Cluster is { } cluster ? cluster[action] : -1);
        cost = (cost + actions.Cost[action]) * Weight;
        var after = new List<World>();
        foreach (World world in All)
        {
            World[] split = [world];
            bool finds = false;
            for (int c = 0; c < components; c++)
            {
                double success = actions.Success[action * components + c];
                if (success == 0 || (world.Broken >> c & 1) == 0) continue;
                finds = true;
                int bit = 1 << c;
                split =
                [
                    .. split.Select(w => w with { Broken = w.Broken & ~bit, Weight = w.Weight * success }),
                    .. split.Select(w => w with { Weight = w.Weight * (1 - success) }),
                ];
            }

            if (finds) cost += world.Weight * (actions.RepairCost is { } repair ? repair[action] : 0);
            after.AddRange(split.Where(w => w.Weight > 0));
        }

        return (cost, this with { All = [.. after], Tried = Tried | 1 << action, Open = open });
    }

    internal (double Cost, Worlds[] Outcomes) Ask(int check)
    {
        CheckTable checks = Problem.Checks;
        (double cost, int open) = SetUp(checks.Cluster is { } cluster ? cluster[check] : -1);
        int start = 0;
        for (int k = 0; k < check; k++) start += checks.Outcomes[k] * Problem.Hypotheses.Weights.Length;
        var outcomes = new Worlds[checks.Outcomes[check]];
        for (int o = 0; o < outcomes.Length; o++)
        {
            World[] told =
            [
                .. All.Select(w => w with
                {
                    Weight = w.Weight * checks.OutcomeProbability[start + w.Hypothesis * outcomes.Length + o],
                }).Where(w => w.Weight > 0),
            ];
            outcomes[o] = this with { All = told, Asked = Asked | 1 << check, Open = open };
        }

        return ((cost + checks.Cost[check]) * Weight, outcomes);
    }

    internal bool MayAct(int action) => (Tried >> action & 1) == 0 && (Problem.Actions.Allowed?[action] ?? true);

    internal bool MayAsk(int check) => (Asked >> check & 1) == 0 && (Problem.Checks.Allowed?[check] ?? true);

    private (double Cost, int Open) SetUp(int cluster)
    {
        if (cluster < 0 || (Open >> cluster & 1) == 1) return (0, Open);
        ClusterTable clusters = Problem.Clusters;
        double cost = clusters.OpenCost[cluster] + (clusters.TestInside[cluster] ? clusters.CloseCost[cluster] : 0);
        return (cost, Open | 1 << cluster);
    }
}
