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
    private readonly int[] mendsStart = model.Mends.Start;
    private readonly int[] mendsEntry = model.Mends.Entry;
    private readonly double[] mendsValue = model.Mends.Value;
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
        int[] start = model.Broken.Start, entry = model.Broken.Entry;
        bool[] hopeful = model.Hopeful;
        long work = 0;
        Array.Clear(mended);
        for (int g = 0; g < groupWeights.Length; g++)
        {
            int from = start[g], to = start[g + 1];
            double weight = groupWeights[g];
            total += weight;
            expectedBroken[g] = to - from;
            if (from == to) met += weight;
            else if (scoring && weight > 0 && hopeful[g])
            {
                work += to - from;
                double part = weight / (to - from);
                for (int i = from; i < to; i++) share[entry[i]] += part;
            }
        }

        Work += work;
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
        int[] entry = mendsEntry;
        for (int i = mendsStart[action], end = mendsStart[action + 1]; i < end; i++)
        {
            int c = entry[i];
            benefit += mendsValue[i] * stillBroken[c] * share[c];
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
        int[] start = model.Broken.Start, groups = model.GroupsOf.Entry, groupsStart = model.GroupsOf.Start;
        bool[] hopeful = model.Hopeful;
        for (int i = mendsStart[action]; i < mendsStart[action + 1]; i++)
        {
            int c = mendsEntry[i];
            double still = stillBroken[c] *= 1 - mendsValue[i];
            if (scoring) Mark(c);
            int from = groupsStart[c], to = groupsStart[c + 1];
            Work += to - from;
            for (int j = from; j < to; j++)
            {
                int g = groups[j];
                double weight = weights[g];
                if (!(weight > 0) || !hopeful[g]) continue;
                if (start[g + 1] - start[g] > 1)
                {
                    Update(g, scoring);
                    continue;
                }

                // By far the most groups have one broken component: nothing is shared out.
                double all = 1 - still;
                Left = Math.Max(0, Left - weight * (all - mended[g]));
                mended[g] = all;
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
        if (!scoring) return;
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
