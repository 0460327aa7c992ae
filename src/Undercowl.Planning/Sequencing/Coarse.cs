namespace Undercowl.Planning.Sequencing;

/// <summary>
/// A smaller problem that stands for a large one, with the same actions, checks and clusters. Hypotheses with the same broken
/// components and the same costs of deciding are taken together with the mean of their rows, but kept apart by the rows of the
/// leading checks as far as there is room. Of rare sets of broken components one in so many is kept, with the weight of all.
/// </summary>
internal sealed class Coarse
{
    /// <summary>So many hypotheses it has at most, or a few more.</summary>
    internal const int Most = 128;

    private readonly RepairModel model;
    private readonly int[] leading;
    private readonly double[] weightOf;
    private readonly int[] cellOf;

    private Coarse(RepairModel model, int[] leading)
    {
        (this.model, this.leading) = (model, leading);
        cellOf = (int[])model.GroupOf.Clone();
        TroubleshootingProblem problem = model.Problem;
        for (int d = 0; d < problem.Decisions.Count; d++) Split(problem.Decisions.Cost, d * problem.Hypotheses.Weights.Length, 1, int.MaxValue);
        weightOf = Thin();
        foreach (int k in leading) Split(problem.Checks.OutcomeProbability, model.FirstRow[k], problem.Checks.Outcomes[k], Most);
    }

    /// <summary>The problem itself where it is small enough.</summary>
    /// <param name="model">The problem.</param>
    /// <param name="leading">Checks to be told apart by, the most important first.</param>
    internal static TroubleshootingProblem Of(RepairModel model, int[] leading) =>
        model.Possible.Length <= Most ? model.Problem : new Coarse(model, leading).Build();

    /// <summary>
    /// The weights with the rare cells thinned: taken in the order in which they first appear among the hypotheses, one of them is kept
    /// each time that their weights have filled up another equal part of the whole.
    /// </summary>
    private double[] Thin()
    {
        double[] weights = (double[])model.Weight.Clone();
        int cells = cellOf.Max() + 1;
        var mass = new double[cells];
        for (int i = 0; i < cellOf.Length; i++) mass[cellOf[i]] += weights[i];
        if (cells <= Most) return weights;

        double[] sorted = [.. mass.OrderDescending()];
        // The least mass that is common: below it, what is rare shares the room that is left.
        int common = Most / 2;
        double rare = sorted[common..].Sum();
        double part = rare / (Most - common), line = sorted[common], gathered = part / 2;
        var factor = new double[cells];
        for (int c = 0; c < cells; c++)
        {
            if (mass[c] > line)
            {
                factor[c] = 1;
                continue;
            }

            gathered += mass[c];
            while (gathered >= part)
            {
                factor[c] += part / mass[c];
                gathered -= part;
            }
        }

        for (int i = 0; i < weights.Length; i++) weights[i] *= factor[cellOf[i]];
        return weights;
    }

    /// <summary>Splits cells by the rows of a table, unless that makes too many.</summary>
    private void Split(double[] table, int start, int length, int most)
    {
        var numbers = new Dictionary<(int, ulong), int>();
        var split = new int[cellOf.Length];
        for (int i = 0; i < split.Length; i++)
        {
            if (weightOf is not null && !(weightOf[i] > 0)) continue;
            ulong row = 14695981039346656037;
            for (int j = 0; j < length; j++)
            {
                row = (row ^ BitConverter.DoubleToUInt64Bits(table[start + model.Possible[i] * length + j])) * 1099511628211;
            }

            var key = (cellOf[i], row);
            if (!numbers.TryGetValue(key, out split[i])) numbers[key] = split[i] = numbers.Count;
            if (numbers.Count > most) return;
        }

        split.CopyTo(cellOf, 0);
    }

    private TroubleshootingProblem Build()
    {
        TroubleshootingProblem problem = model.Problem;
        int[] kept = [.. Enumerable.Range(0, cellOf.Length).Where(i => weightOf[i] > 0)];
        var number = new Dictionary<int, int>();
        int[] cell = [.. kept.Select(i => number.TryGetValue(cellOf[i], out int known) ? known : number[cellOf[i]] = number.Count)];
        int count = number.Count, components = problem.Hypotheses.Components, decisions = problem.Decisions.Count;
        var weights = new double[count];
        var broken = new bool[count * components];
        var decide = new double[decisions * count];
        for (int j = 0; j < kept.Length; j++)
        {
            weights[cell[j]] += weightOf[kept[j]];
            foreach (int c in model.Broken[model.GroupOf[kept[j]]]) broken[cell[j] * components + c] = true;
            for (int d = 0; d < decisions; d++) decide[d * count + cell[j]] = model.CostOf(d, kept[j]);
        }

        CheckTable checks = problem.Checks;
        var rows = new double[checks.Outcomes.Sum() * count];
        int start = 0;
        for (int k = 0; k < checks.Outcomes.Length; start += checks.Outcomes[k++] * count)
        {
            int outcomes = checks.Outcomes[k];
            for (int j = 0; j < kept.Length; j++)
            {
                double share = weightOf[kept[j]] / weights[cell[j]];
                int from = model.FirstRow[k] + model.Possible[kept[j]] * outcomes, to = start + cell[j] * outcomes;
                for (int o = 0; o < outcomes; o++) rows[to + o] += share * checks.OutcomeProbability[from + o];
            }
        }

        return new TroubleshootingProblem(
            new HypothesisTable { Weights = weights, Components = components, Broken = broken },
            problem.Actions,
            new CheckTable { Cost = checks.Cost, Outcomes = checks.Outcomes, OutcomeProbability = rows, Cluster = checks.Cluster, Allowed = checks.Allowed },
            problem.Clusters,
            problem.SystemTestCost,
            problem.ReferCost,
            new DecisionTable { Count = decisions, Cost = decide });
    }
}
