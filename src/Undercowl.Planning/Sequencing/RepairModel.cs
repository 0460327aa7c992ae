namespace Undercowl.Planning.Sequencing;

/// <summary>
/// The repair side of a problem in sparse form. Hypotheses that break the same components cost the same to repair, so
/// they are one group; impossible hypotheses, forbidden actions and components that cannot be broken are left out.
/// </summary>
internal sealed class RepairModel
{
    internal RepairModel(TroubleshootingProblem problem)
    {
        Problem = problem;
        HypothesisTable hypotheses = problem.Hypotheses;
        int components = hypotheses.Components;
        double total = hypotheses.Weights.Sum();

        var keys = new Dictionary<string, int>(StringComparer.Ordinal);
        var broken = new List<(int, int, double)>();
        var groupsOf = new List<(int, int, double)>();
        var possible = new List<int>();
        var groupOf = new List<int>();
        var row = new char[components];
        for (int h = 0; h < hypotheses.Weights.Length; h++)
        {
            if (!(hypotheses.Weights[h] > 0)) continue;
            for (int c = 0; c < components; c++) row[c] = hypotheses.Broken[h * components + c] ? '1' : '0';
            var key = new string(row);
            if (!keys.TryGetValue(key, out int group))
            {
                group = keys.Count;
                keys.Add(key, group);
                for (int c = 0; c < components; c++)
                {
                    if (row[c] == '0') continue;
                    broken.Add((group, c, 1));
                    groupsOf.Add((c, group, 1));
                }
            }

            possible.Add(h);
            groupOf.Add(group);
        }

        Possible = [.. possible];
        GroupOf = [.. groupOf];
        Weight = [.. possible.Select(h => hypotheses.Weights[h] / total)];
        Groups = keys.Count;
        Broken = new Rows(broken, Groups);
        GroupsOf = new Rows(groupsOf, components);

        ActionTable actions = problem.Actions;
        var mends = new List<(int, int, double)>();
        var mendedBy = new List<(int, int, double)>();
        for (int a = 0; a < actions.Cost.Length; a++)
        {
            if (actions.Allowed is { } allowed && !allowed[a]) continue;
            for (int c = 0; c < components; c++)
            {
                double success = actions.Success[a * components + c];
                if (!(success > 0) || GroupsOf[c].IsEmpty) continue;
                mends.Add((a, c, success));
                mendedBy.Add((c, a, success));
            }
        }

        Mends = new Rows(mends, actions.Cost.Length);
        MendedBy = new Rows(mendedBy, components);
        Useful = [.. Enumerable.Range(0, actions.Cost.Length).Where(a => !Mends[a].IsEmpty)];
        Hopeful = new bool[Groups];
        for (int g = 0; g < Groups; g++)
        {
            Hopeful[g] = true;
            foreach (int c in Broken[g]) Hopeful[g] &= !MendedBy[c].IsEmpty;
        }

        FirstRow = new int[problem.Checks.Cost.Length];
        for (int k = 1; k < FirstRow.Length; k++) FirstRow[k] = FirstRow[k - 1] + problem.Checks.Outcomes[k - 1] * hypotheses.Weights.Length;

        ClusterOf = actions.Cluster ?? [.. Enumerable.Repeat(-1, actions.Cost.Length)];
        int clusters = problem.Clusters.OpenCost.Length;
        UsefulInCluster = new Rows([.. Useful.Where(a => ClusterOf[a] >= 0).Select(a => (ClusterOf[a], a, 1.0))], clusters);
        Postpones = problem.SystemTestCost > 0
            || Useful.Any(a => ClusterOf[a] is >= 0 and var g && !problem.Clusters.TestInside[g]);
        LargestGroup = Groups == 0 ? 0 : Enumerable.Range(0, Groups).Max(g => Broken[g].Length);
    }

    internal TroubleshootingProblem Problem { get; }

    /// <summary>Hypotheses of weight above 0; <see cref="GroupOf"/> and <see cref="Weight"/> (sum 1) go with them.</summary>
    internal int[] Possible { get; }

    internal int[] GroupOf { get; }

    internal double[] Weight { get; }

    internal int Groups { get; }

    /// <summary>Group to its broken components, and component to the groups that break it.</summary>
    internal Rows Broken { get; }

    internal Rows GroupsOf { get; }

    /// <summary>Action to the components it can mend with the success as value, and component to its actions.</summary>
    internal Rows Mends { get; }

    internal Rows MendedBy { get; }

    /// <summary>Actions that are allowed and can mend something that may be broken.</summary>
    internal int[] Useful { get; }

    internal Rows UsefulInCluster { get; }

    /// <summary>Whether every broken component of the group has an action.</summary>
    internal bool[] Hopeful { get; }

    /// <summary>Whether leaving out a system test could ever pay.</summary>
    internal bool Postpones { get; }

    internal int LargestGroup { get; }

    /// <summary>One per check: where its block begins in <see cref="CheckTable.OutcomeProbability"/>.</summary>
    internal int[] FirstRow { get; }

    /// <summary>One per action: its cluster, or -1.</summary>
    internal int[] ClusterOf { get; }

    /// <summary>Cost of a decision under the i-th possible hypothesis.</summary>
    internal double CostOf(int decision, int i) => Problem.Decisions.Cost[decision * Problem.Hypotheses.Weights.Length + Possible[i]];

    /// <summary>Expected cost of a decision now.</summary>
    internal double Decided(int decision)
    {
        double cost = 0;
        for (int i = 0; i < Possible.Length; i++) cost += Weight[i] * CostOf(decision, i);
        return cost;
    }

    /// <summary>Probability that the action mends something broken.</summary>
    internal double ProbabilityOfHelp(int action, ReadOnlySpan<double> groupWeights)
    {
        int components = Problem.Hypotheses.Components;
        double helps = 0;
        for (int g = 0; g < Groups; g++)
        {
            double nothing = 1;
            foreach (int c in Broken[g]) nothing *= 1 - Problem.Actions.Success[action * components + c];
            helps += groupWeights[g] * (1 - nothing);
        }

        return helps;
    }
}
