namespace Undercowl.Planning.Sequencing;

/// <summary>
/// What is left broken while a sequence of actions is carried out, exactly, for one set of group weights. The chance that a
/// component is still broken after some actions does not depend on the hypothesis, so one number per component is enough.
/// </summary>
internal sealed class RepairState(RepairModel model)
{
    private readonly double[] stillBroken = new double[model.Problem.Hypotheses.Components];
    private readonly double[] mended = new double[model.Groups];
    private readonly double[] expectedBroken = new double[model.Groups];
    private readonly double[] share = new double[model.Problem.Hypotheses.Components];
    private readonly int[] seen = new int[model.Groups];
    private readonly bool[] isChanged = new bool[model.Problem.Hypotheses.Components];
    private readonly int[] changed = new int[model.Problem.Hypotheses.Components];
    private int changedCount;
    private double[] weights = [];
    private int tick;

    /// <summary>Weight of all hypotheses, and of those in which the goal is met before anything is done.</summary>
    internal double Total { get; private set; }

    internal double MetAtStart { get; private set; }

    /// <summary>Weight that the goal is not met after the actions so far.</summary>
    internal double Left { get; private set; }

    internal long Work { get; private set; }

    /// <summary>Components whose part in any <see cref="Benefit"/> may have changed since <see cref="Settle"/>.</summary>
    internal ReadOnlySpan<int> Changed => changed.AsSpan(0, changedCount);

    internal void Settle()
    {
        foreach (int c in Changed) isChanged[c] = false;
        changedCount = 0;
    }

    internal void Begin(double[] groupWeights, bool scoring)
    {
        weights = groupWeights;
        Array.Fill(stillBroken, 1);
        if (scoring) Array.Clear(share);
        Settle();
        double total = 0, met = 0;
        Rows rows = model.Broken;
        for (int g = 0; g < groupWeights.Length; g++)
        {
            ReadOnlySpan<int> broken = rows[g];
            double weight = groupWeights[g];
            total += weight;
            mended[g] = 0;
            expectedBroken[g] = broken.Length;
            if (broken.IsEmpty) met += weight;
            else if (scoring && weight > 0 && model.Hopeful[g])
            {
                Work += broken.Length;
                foreach (int c in broken) share[c] += weight / broken.Length;
            }
        }

        Work += model.Groups;
        Total = total;
        MetAtStart = met;
        Left = total - met;
    }

    /// <summary>
    /// Weight an action would take off what is left, with a hypothesis of several broken components credited in equal parts
    /// to those still expected to be broken. With one broken component it is the exact drop of <see cref="Left"/>.
    /// </summary>
    internal double Benefit(int action)
    {
        double benefit = 0;
        Rows mends = model.Mends;
        for (int i = mends.Start[action]; i < mends.Start[action + 1]; i++)
        {
            int c = mends.Entry[i];
            benefit += mends.Value[i] * stillBroken[c] * share[c];
        }

        return benefit;
    }

    /// <summary>Weight that at least one component the action works on is still broken.</summary>
    internal double FindsBroken(int action)
    {
        tick++;
        double found = 0;
        int row = action * model.Problem.Hypotheses.Components;
        double[] success = model.Problem.Actions.Success;
        foreach (int component in model.Mends[action])
        {
            foreach (int g in model.GroupsOf[component])
            {
                if (seen[g] == tick) continue;
                seen[g] = tick;
                double sound = 1;
                foreach (int c in model.Broken[g])
                {
                    if (success[row + c] > 0) sound *= 1 - stillBroken[c];
                }

                found += weights[g] * (1 - sound);
                Work++;
            }
        }

        return found;
    }

    /// <summary>Carries an action out; with <paramref name="scoring"/>, <see cref="Changed"/> gains what it changed.</summary>
    internal void Apply(int action, bool scoring)
    {
        Rows mends = model.Mends;
        for (int i = mends.Start[action]; i < mends.Start[action + 1]; i++)
        {
            int c = mends.Entry[i];
            stillBroken[c] *= 1 - mends.Value[i];
            if (scoring) Mark(c);
            ReadOnlySpan<int> groups = model.GroupsOf[c];
            Work += groups.Length;
            foreach (int g in groups)
            {
                if (weights[g] > 0 && model.Hopeful[g]) Update(g, scoring);
            }
        }
    }

    private void Update(int g, bool scoring)
    {
        ReadOnlySpan<int> broken = model.Broken[g];
        double all = 1, expected = 0;
        foreach (int c in broken)
        {
            all *= 1 - stillBroken[c];
            expected += stillBroken[c];
        }

        Left = Math.Max(0, Left - weights[g] * (all - mended[g]));
        mended[g] = all;
        if (!scoring || broken.Length == 1) return;
        expected = Math.Max(1, expected);
        double more = weights[g] / expected - weights[g] / expectedBroken[g];
        expectedBroken[g] = expected;
        Work += broken.Length;
        foreach (int c in broken)
        {
            share[c] = Math.Max(0, share[c] + more);
            Mark(c);
        }
    }

    private void Mark(int component)
    {
        if (isChanged[component]) return;
        isChanged[component] = true;
        changed[changedCount++] = component;
    }
}
