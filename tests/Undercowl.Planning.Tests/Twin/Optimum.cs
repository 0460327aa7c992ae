namespace Undercowl.Planning.Tests.Twin;

/// <summary>
/// The least expected cost of any policy by dynamic programming over every state that can be come to: the answers so far, the actions
/// done at the last failed test and since, and what stands open. As exhaustive as <see cref="Exhaustive"/>, which proves it, but each state once.
/// </summary>
internal sealed class Optimum
{
    private readonly TroubleshootingProblem problem;
    private readonly int hypotheses;
    private readonly int[] answerUnit;
    private readonly int[] rowStart;
    private readonly double[] unmet;
    private readonly double[] known;
    private readonly int actions;

    private Optimum(TroubleshootingProblem problem)
    {
        this.problem = problem;
        (hypotheses, actions) = (problem.Hypotheses.Weights.Length, problem.Actions.Cost.Length);
        int checks = problem.Checks.Cost.Length;
        (answerUnit, rowStart) = (new int[checks], new int[checks]);
        int unit = 1;
        for (int k = 0, row = 0; k < checks; k++)
        {
            (answerUnit[k], rowStart[k]) = (unit, row);
            unit *= problem.Checks.Outcomes[k] + 1;
            row += problem.Checks.Outcomes[k] * hypotheses;
        }

        unmet = [.. Enumerable.Range(0, 1 << actions).SelectMany(done => Enumerable.Range(0, hypotheses).Select(h => Unmet(h, done)))];
        known = new double[unit * ((1 << actions) + 1) << actions + problem.Clusters.OpenCost.Length];
        Array.Fill(known, double.NaN);
    }

    /// <summary>Weighted with the hypotheses' weights, as <see cref="Exhaustive.Optimum"/>. Repair costs, decisions and what is not allowed are not provided for.</summary>
    internal static double Of(TroubleshootingProblem problem)
    {
        int open = 0;
        for (int g = 0; g < problem.Clusters.IsOpen.Length; g++) open |= problem.Clusters.IsOpen[g] ? 1 << g : 0;
        return new Optimum(problem).Value(0, -1, 0, open, problem.Hypotheses.Weights);
    }

    /// <param name="answers">By check, in its unit: 0 for not asked, else the outcome and one.</param>
    /// <param name="tested">Actions done when the last test failed; -1 when none was made.</param>
    /// <param name="done">Actions done.</param>
    /// <param name="open">Clusters open.</param>
    /// <param name="weights">Of the hypotheses with the answers so far.</param>
    private double Value(int answers, int tested, int done, int open, double[] weights)
    {
        ref double found = ref known[((answers * ((1 << actions) + 1) + tested + 1 << actions) + done << problem.Clusters.OpenCost.Length) + open];
        if (!double.IsNaN(found)) return found;
        double weight = 0;
        for (int h = 0; h < hypotheses; h++) weight += tested < 0 ? weights[h] : weights[h] * unmet[tested * hypotheses + h];
        double best = problem.ReferCost * weight;
        if (weight > 0)
        {
            ClusterTable clusters = problem.Clusters;
            if (tested != done)
            {
                double test = problem.SystemTestCost;
                int closed = open;
                for (int g = 0; g < clusters.OpenCost.Length; g++)
                {
                    if ((open >> g & 1) == 0 || clusters.TestInside[g]) continue;
                    test += clusters.CloseCost[g];
                    closed &= ~(1 << g);
                }

                best = Math.Min(best, test * weight + Value(answers, done, done, closed, weights));
            }

            for (int a = 0; a < actions; a++)
            {
                if ((done >> a & 1) == 1) continue;
                (double cost, int after) = SetUp(problem.Actions.Cluster?[a] ?? -1, open);
                cost = (cost + problem.Actions.Cost[a]) * weight;
                if (cost < best) best = Math.Min(best, cost + Value(answers, tested, done | 1 << a, after, weights));
            }

            for (int k = 0; k < problem.Checks.Cost.Length; k++)
            {
                int outcomes = problem.Checks.Outcomes[k];
                if (answers / answerUnit[k] % (outcomes + 1) != 0) continue;
                (double cost, int after) = SetUp(problem.Checks.Cluster?[k] ?? -1, open);
                cost = (cost + problem.Checks.Cost[k]) * weight;
                for (int o = 0; o < outcomes && cost < best; o++)
                {
                    var told = new double[hypotheses];
                    for (int h = 0; h < hypotheses; h++) told[h] = weights[h] * problem.Checks.OutcomeProbability[rowStart[k] + h * outcomes + o];
                    cost += Value(answers + (o + 1) * answerUnit[k], tested, done, after, told);
                }

                best = Math.Min(best, cost);
            }
        }

        return found = best;
    }

    /// <summary>Chance that something is still broken after the actions: each acts on each component by itself.</summary>
    private double Unmet(int hypothesis, int done)
    {
        int components = problem.Hypotheses.Components;
        double met = 1;
        for (int c = 0; c < components; c++)
        {
            if (!problem.Hypotheses.Broken[hypothesis * components + c]) continue;
            double still = 1;
            for (int a = 0; a < actions; a++)
            {
                if ((done >> a & 1) == 1) still *= 1 - problem.Actions.Success[a * components + c];
            }

            met *= 1 - still;
        }

        return 1 - met;
    }

    private (double Cost, int Open) SetUp(int cluster, int open)
    {
        if (cluster < 0 || (open >> cluster & 1) == 1) return (0, open);
        ClusterTable clusters = problem.Clusters;
        return (clusters.OpenCost[cluster] + (clusters.TestInside[cluster] ? clusters.CloseCost[cluster] : 0), open | 1 << cluster);
    }
}
