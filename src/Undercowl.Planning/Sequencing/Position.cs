namespace Undercowl.Planning.Sequencing;

/// <summary>Where a look-ahead stands: what answers and failed tests have left of each cell, what has been done, asked and opened.</summary>
internal sealed class Position
{
    private readonly RepairModel model;
    private readonly Cells cells;
    private readonly double[] still;
    private readonly double[] unmet;
    private readonly int[] done;
    private int doneCount;

    internal Position(RepairModel model, Cells cells)
    {
        (this.model, this.cells) = (model, cells);
        still = new double[model.Problem.Hypotheses.Components];
        unmet = new double[model.Groups];
        done = new int[model.Problem.Actions.Cost.Length];
        Weight = new double[cells.Count];
        Left = new double[cells.Count];
        GroupWeight = new double[model.Groups];
        GroupLeft = new double[model.Groups];
        Open = new bool[model.Problem.Clusters.OpenCost.Length];
    }

    /// <summary>By cell: the chance of it and of all answers so far; what was mended and tested since is in it still.</summary>
    internal double[] Weight { get; }

    /// <summary>By cell: the same, less what has been mended.</summary>
    internal double[] Left { get; }

    internal double[] GroupWeight { get; }

    internal double[] GroupLeft { get; }

    /// <summary>Chance that the job goes on from here.</summary>
    internal double Total { get; private set; }

    /// <summary>Chance that the goal is met and no test has shown it.</summary>
    internal double Met { get; private set; }

    internal bool[] Open { get; }

    internal ReadOnlySpan<int> Done => done.AsSpan(0, doneCount);

    internal void Begin()
    {
        cells.Weight.CopyTo(Weight, 0);
        model.Problem.Clusters.IsOpen.CopyTo(Open, 0);
        Array.Fill(still, 1);
        doneCount = 0;
        Mended();
        Sum();
    }

    /// <summary>As it stands after an outcome of a check.</summary>
    internal void Answered(Position before, int check, int outcome)
    {
        Take(before);
        ReadOnlySpan<double> chance = cells.Chance[check].AsSpan(outcome * cells.Count, cells.Count);
        double[] from = before.Weight, to = Weight;
        for (int i = 0; i < chance.Length; i++) to[i] = from[i] * chance[i];
        Sum();
    }

    /// <summary>As it stands after actions, if any, and a test that failed.</summary>
    internal void Failed(Position before, ReadOnlySpan<int> actions)
    {
        Take(before);
        for (int i = 0; i < Weight.Length; i++) Weight[i] = model.Broken[cells.GroupOf[i]].IsEmpty ? 0 : before.Weight[i];
        foreach (int a in actions)
        {
            done[doneCount++] = a;
            for (int i = model.Mends.Start[a]; i < model.Mends.Start[a + 1]; i++) still[model.Mends.Entry[i]] *= 1 - model.Mends.Value[i];
        }

        Mended();
        Sum();
    }

    internal bool IsDone(int action) => Done.Contains(action);

    /// <summary>Weight that an action would take off what is left, a hypothesis of several broken components credited in equal parts.</summary>
    internal double Benefit(int action)
    {
        double benefit = 0;
        Rows mends = model.Mends, groups = model.GroupsOf;
        int[] broken = model.Broken.Start;
        double[] weight = GroupWeight;
        for (int i = mends.Start[action]; i < mends.Start[action + 1]; i++)
        {
            int c = mends.Entry[i];
            double share = 0;
            for (int j = groups.Start[c]; j < groups.Start[c + 1]; j++)
            {
                int g = groups.Entry[j];
                share += weight[g] / (broken[g + 1] - broken[g]);
            }

            benefit += mends.Value[i] * still[c] * share;
        }

        return benefit;
    }

    private void Take(Position before)
    {
        before.still.CopyTo(still, 0);
        before.unmet.CopyTo(unmet, 0);
        before.Done.CopyTo(done);
        doneCount = before.doneCount;
        before.Open.CopyTo(Open, 0);
    }

    private void Mended()
    {
        int[] start = model.Broken.Start, broken = model.Broken.Entry;
        for (int g = 0; g < unmet.Length; g++)
        {
            double all = 1;
            for (int i = start[g]; i < start[g + 1]; i++) all *= 1 - still[broken[i]];
            unmet[g] = start[g] == start[g + 1] ? 1 : 1 - all;
        }
    }

    private void Sum()
    {
        double[] weight = Weight, left = Left, groupWeight = GroupWeight, groupLeft = GroupLeft, unmet = this.unmet;
        int[] groupOf = cells.GroupOf, broken = model.Broken.Start;
        Array.Clear(groupWeight);
        for (int i = 0; i < weight.Length; i++)
        {
            int g = groupOf[i];
            groupWeight[g] += weight[i];
            left[i] = weight[i] * unmet[g];
        }

        double total = 0, met = 0;
        for (int g = 0; g < unmet.Length; g++)
        {
            double here = groupLeft[g] = groupWeight[g] * unmet[g];
            total += here;
            if (broken[g] == broken[g + 1]) met += here;
        }

        (Total, Met) = (total, met);
    }
}
