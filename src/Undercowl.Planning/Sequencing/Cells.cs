namespace Undercowl.Planning.Sequencing;

/// <summary>The possible hypotheses with their rows laid out outcome by outcome, for sums over all hypotheses.</summary>
internal sealed class Cells
{
    internal Cells(RepairModel model)
    {
        TroubleshootingProblem problem = model.Problem;
        Count = model.Possible.Length;
        Weight = model.Weight;
        GroupOf = model.GroupOf;
        Chance = new double[problem.Checks.Cost.Length][];
        for (int k = 0; k < Chance.Length; k++)
        {
            int outcomes = problem.Checks.Outcomes[k];
            Chance[k] = new double[outcomes * Count];
            for (int i = 0; i < Count; i++)
            {
                int row = model.FirstRow[k] + model.Possible[i] * outcomes;
                for (int o = 0; o < outcomes; o++) Chance[k][o * Count + i] = problem.Checks.OutcomeProbability[row + o];
            }
        }

        Decide = new double[problem.Decisions.Count * Count];
        for (int d = 0; d < problem.Decisions.Count; d++)
        {
            for (int i = 0; i < Count; i++) Decide[d * Count + i] = model.CostOf(d, i);
        }
    }

    internal int Count { get; }

    internal double[] Weight { get; }

    internal int[] GroupOf { get; }

    /// <summary>By check: <c>[o*Count + i]</c>, the chance of outcome o under hypothesis i.</summary>
    internal double[][] Chance { get; }

    /// <summary><c>[d*Count + i]</c>: the cost of a decision.</summary>
    internal double[] Decide { get; }
}
