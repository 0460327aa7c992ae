using System.Globalization;

namespace Undercowl.Planning;

/// <summary>What the arrays of a problem must hold. Every breach names the array, the place, and the mend.</summary>
internal static class ProblemRules
{
    // Rows come from normalised posteriors, whose rounding stays far below this; a forgotten outcome does not.
    private const double RowSumTolerance = 1e-9;

    internal static void Enforce(TroubleshootingProblem problem)
    {
        int clusters = ClusterRules(problem.Clusters);
        HypothesisRules(problem.Hypotheses);
        ActionRules(problem.Actions, problem.Hypotheses.Components, clusters);
        CheckRules(problem.Checks, problem.Hypotheses.Weights, clusters);
        DecisionRules(problem.Decisions, problem.Hypotheses.Weights.Length);
        Cost("SystemTestCost", null, problem.SystemTestCost);
        Cost("ReferCost", null, problem.ReferCost);
    }

    private static int ClusterRules(ClusterTable t)
    {
        int count = t.OpenCost.Length;
        Costs("Clusters.OpenCost", t.OpenCost, count);
        Costs("Clusters.CloseCost", t.CloseCost, count);
        Length("Clusters.IsOpen", t.IsOpen.Length, count, "one per cluster");
        Length("Clusters.TestInside", t.TestInside.Length, count, "one per cluster");
        return count;
    }

    private static void HypothesisRules(HypothesisTable t)
    {
        if (t.Components < 0)
            throw new PlanningException("Hypotheses.Components", null, $"is {t.Components}", "give 0 or more");
        double total = 0;
        for (int h = 0; h < t.Weights.Length; h++)
        {
            if (!double.IsFinite(t.Weights[h]) || t.Weights[h] < 0)
                throw new PlanningException("Hypotheses.Weights", h, $"is {Text(t.Weights[h])}", "give a finite weight of 0 or more");
            total += t.Weights[h];
        }

        if (!(total > 0) || !double.IsFinite(total))
            throw new PlanningException("Hypotheses.Weights", null, $"sums to {Text(total)}", "give at least one hypothesis a weight above 0, and keep the sum finite");
        Length("Hypotheses.Broken", t.Broken.Length, t.Weights.Length * t.Components, "hypotheses x components");
    }

    private static void ActionRules(ActionTable t, int components, int clusters)
    {
        int count = t.Cost.Length;
        Costs("Actions.Cost", t.Cost, count);
        Length("Actions.Success", t.Success.Length, count * components, "actions x components");
        for (int i = 0; i < t.Success.Length; i++) Probability("Actions.Success", i, t.Success[i]);
        if (t.RepairCost is { } repair) Costs("Actions.RepairCost", repair, count);
        ClusterIndices("Actions.Cluster", t.Cluster, count, clusters);
        if (t.Allowed is { } allowed) Length("Actions.Allowed", allowed.Length, count, "one per action");
    }

    private static void DecisionRules(DecisionTable t, int hypotheses)
    {
        if (t.Count < 0)
            throw new PlanningException("Decisions.Count", null, $"is {t.Count}", "give 0 or more");
        Length("Decisions.Cost", t.Cost.Length, t.Count * hypotheses, "decisions x hypotheses");
        for (int i = 0; i < t.Cost.Length; i++)
        {
            if (!double.IsFinite(t.Cost[i]))
                throw new PlanningException("Decisions.Cost", i, $"is {Text(t.Cost[i])}", "give a finite cost, below 0 for a payoff");
        }
    }

    private static void CheckRules(CheckTable t, double[] weights, int clusters)
    {
        int count = t.Cost.Length;
        Costs("Checks.Cost", t.Cost, count);
        Length("Checks.Outcomes", t.Outcomes.Length, count, "one per check");
        long length = 0;
        for (int k = 0; k < count; k++)
        {
            if (t.Outcomes[k] < 1) throw new PlanningException("Checks.Outcomes", k, $"is {t.Outcomes[k]}", "give 1 or more");
            length += (long)t.Outcomes[k] * weights.Length;
        }

        Length("Checks.OutcomeProbability", t.OutcomeProbability.Length, length, "for each check hypotheses x outcomes");
        ClusterIndices("Checks.Cluster", t.Cluster, count, clusters);
        if (t.Allowed is { } allowed) Length("Checks.Allowed", allowed.Length, count, "one per check");

        int at = 0;
        for (int k = 0; k < count; k++)
        {
            int outcomes = t.Outcomes[k];
            for (int h = 0; h < weights.Length; h++, at += outcomes)
            {
                if (weights[h] > 0 && !IsRow(t.OutcomeProbability, at, outcomes)) Row(t, k, h, at);
            }
        }
    }

    private static bool IsRow(double[] table, int start, int outcomes)
    {
        double sum = 0;
        bool chances = true;
        for (int i = start; i < start + outcomes; i++)
        {
            double chance = table[i];
            sum += chance;
            chances &= chance >= 0 && chance <= 1;
        }

        return chances && Math.Abs(sum - 1) <= RowSumTolerance;
    }

    /// <summary>Says what is wrong with a row.</summary>
    private static void Row(CheckTable t, int check, int hypothesis, int start)
    {
        double sum = 0;
        for (int o = 0; o < t.Outcomes[check]; o++)
        {
            Probability("Checks.OutcomeProbability", start + o, t.OutcomeProbability[start + o]);
            sum += t.OutcomeProbability[start + o];
        }

        if (Math.Abs(sum - 1) > RowSumTolerance)
        {
            throw new PlanningException(
                "Checks.OutcomeProbability", start, $"starts the row of check {check}, hypothesis {hypothesis}, which sums to {Text(sum)}", "make the row sum to 1");
        }
    }

    private static void Costs(string array, double[] values, int expected)
    {
        Length(array, values.Length, expected, "one per row of the table");
        for (int i = 0; i < values.Length; i++) Cost(array, i, values[i]);
    }

    private static void Cost(string array, int? index, double value)
    {
        if (!double.IsFinite(value) || value < 0)
            throw new PlanningException(array, index, $"is {Text(value)}", "give a finite cost of 0 or more");
    }

    private static void Probability(string array, int index, double value)
    {
        if (!(value >= 0 && value <= 1))
            throw new PlanningException(array, index, $"is {Text(value)}", "a probability lies between 0 and 1");
    }

    private static void ClusterIndices(string array, int[]? values, int count, int clusters)
    {
        if (values is null) return;
        Length(array, values.Length, count, "one per row of the table");
        for (int i = 0; i < count; i++)
        {
            if (values[i] < -1 || values[i] >= clusters)
                throw new PlanningException(array, i, $"is {values[i]}", $"give -1 for none, or a cluster below {clusters}");
        }
    }

    private static void Length(string array, int length, long expected, string shape)
    {
        if (length != expected)
            throw new PlanningException(array, null, $"has length {length}", $"give {expected} ({shape})");
    }

    private static string Text(double value) => value.ToString("R", CultureInfo.InvariantCulture);
}
