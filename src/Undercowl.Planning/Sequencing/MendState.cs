namespace Undercowl.Planning.Sequencing;

/// <summary>
/// How far mending has come along one order of actions: how probably each component is still broken, how much weight each
/// class keeps, and how much every action not yet tried would contribute. Not normalised: all weights scale together.
/// </summary>
/// <remarks>
/// Given a hypothesis, actions succeed independently, so a component is still broken with the product of the failures of the
/// actions tried on it, whatever the hypothesis; a class is still open with 1 - product of (1 - still broken). This is
/// exact along a fixed order, where the only news is that the goal is not yet met.
/// </remarks>
internal sealed class MendState
{
    private readonly GoalClasses classes;
    private readonly ActionEffects effects;
    private readonly double[] weight;
    private readonly double[] classOpen;
    private readonly double[] share;
    private readonly double[] pull;
    private readonly double[] score;
    private readonly bool[] tried;
    private readonly int[] classMark;
    private readonly int[] componentMark;
    private readonly int[] actionMark;
    private readonly int[] touched;
    private int mark;

    internal MendState(GoalClasses classes, ActionEffects effects)
    {
        this.classes = classes;
        this.effects = effects;
        int components = effects.MendCost.Length;
        int actions = effects.Start.Length - 1;
        weight = new double[classes.Count];
        classOpen = new double[classes.Count];
        share = new double[classes.Member.Length];
        pull = new double[components];
        StillBroken = new double[components];
        score = new double[actions];
        tried = new bool[actions];
        classMark = new int[classes.Count];
        componentMark = new int[components];
        actionMark = new int[actions];
        touched = new int[components];
    }

    /// <summary>For each component, the probability that it is still broken given that it was broken at the start.</summary>
    internal double[] StillBroken { get; }

    /// <summary>Weight of the hypotheses not known to be mended: what was open at the last system test.</summary>
    internal double KnownOpen { get; private set; }

    /// <summary>Weight that the next system test will find not mended.</summary>
    internal double Open { get; private set; }

    /// <summary>Whether a system test has been made since <see cref="Begin"/>.</summary>
    internal bool Tested { get; private set; }

    /// <summary>Numbers touched so far.</summary>
    internal long Work { get; set; }

    /// <summary>What action a would contribute now, in weight: 0 once it has been tried or can mend nothing.</summary>
    internal double Score(int action) => score[action];

    /// <summary>What a unit of success at component c is worth, before its own chance of still being broken.</summary>
    internal double Pull(int component) => pull[component];

    internal void Begin(ReadOnlySpan<double> classWeights)
    {
        classWeights.CopyTo(weight);
        Array.Fill(StillBroken, 1);
        Array.Clear(tried);
        Tested = false;
        KnownOpen = 0;
        Open = 0;
        for (int j = 0; j < weight.Length; j++)
        {
            classOpen[j] = j == classes.Met ? 0 : 1;
            KnownOpen += weight[j];
            Open += weight[j] * classOpen[j];
            if (classes.Start[j + 1] - classes.Start[j] > 1) ShareOut(j);
        }

        for (int c = 0; c < pull.Length; c++) Gather(c);
        for (int a = 0; a < score.Length; a++) Rescore(a);
        Work += weight.Length + classes.Member.Length + effects.Component.Length;
    }

    /// <summary>The system is tested: hypotheses that are mended leave.</summary>
    internal void Test()
    {
        KnownOpen = Open;
        Tested = true;
    }

    /// <summary>Carries out an action; scores follow. Whether it worked is not known before the next test.</summary>
    internal void Apply(int action)
    {
        mark++;
        int touchedCount = 0;
        tried[action] = true;
        score[action] = 0;
        for (int i = effects.Start[action]; i < effects.Start[action + 1]; i++)
        {
            int c = effects.Component[i];
            StillBroken[c] *= 1 - effects.Success[i];
            if (componentMark[c] != mark) (componentMark[c], touched[touchedCount++]) = (mark, c);
        }

        int worked = touchedCount;
        double open = Open;
        for (int t = 0; t < worked; t++)
        {
            int c = touched[t];
            int single = classes.Single[c];
            if (single >= 0) Reopen(single, StillBroken[c], ref open);
            for (int e = classes.EntryStart[c]; e < classes.EntryStart[c + 1]; e++)
            {
                int j = classes.EntryClass[e];
                if (classMark[j] == mark) continue;
                classMark[j] = mark;
                Reopen(j, StillOpen(j), ref open);
                ShareOut(j);
                for (int m = classes.Start[j]; m < classes.Start[j + 1]; m++)
                {
                    int other = classes.Member[m];
                    if (componentMark[other] != mark) (componentMark[other], touched[touchedCount++]) = (mark, other);
                }
            }
        }

        Open = Math.Max(0, open);
        for (int t = 0; t < touchedCount; t++) Gather(touched[t]);
        for (int t = 0; t < touchedCount; t++)
        {
            for (int i = effects.ByStart[touched[t]]; i < effects.ByStart[touched[t] + 1]; i++)
            {
                int a = effects.Action[i];
                if (actionMark[a] == mark) continue;
                actionMark[a] = mark;
                Rescore(a);
            }
        }
    }

    /// <summary>Weight in which the action would meet something still broken (certain success) or mend it (its own success).</summary>
    internal double WeightMet(int action, bool certainSuccess)
    {
        mark++;
        double sum = 0;
        for (int i = effects.Start[action]; i < effects.Start[action + 1]; i++)
        {
            int c = effects.Component[i];
            double factor = certainSuccess ? 1 : effects.Success[i];
            if (classes.Single[c] is >= 0 and var single) sum += weight[single] * StillBroken[c] * factor;
            for (int e = classes.EntryStart[c]; e < classes.EntryStart[c + 1]; e++)
            {
                int j = classes.EntryClass[e];
                if (classMark[j] == mark) continue;
                classMark[j] = mark;
                sum += weight[j] * (1 - Missed(j, action, certainSuccess));
            }
        }

        return sum;
    }

    private double Missed(int j, int action, bool certainSuccess)
    {
        double missed = 1;
        for (int i = effects.Start[action]; i < effects.Start[action + 1]; i++)
        {
            int c = effects.Component[i];
            if (Array.BinarySearch(classes.Member, classes.Start[j], classes.Start[j + 1] - classes.Start[j], c) >= 0)
                missed *= 1 - (StillBroken[c] * (certainSuccess ? 1 : effects.Success[i]));
        }

        return missed;
    }

    private void Reopen(int j, double open, ref double total)
    {
        total += weight[j] * (open - classOpen[j]);
        classOpen[j] = open;
    }

    private double StillOpen(int j)
    {
        double mended = 1;
        for (int m = classes.Start[j]; m < classes.Start[j + 1]; m++) mended *= 1 - StillBroken[classes.Member[m]];
        Work += classes.Start[j + 1] - classes.Start[j];
        return 1 - mended;
    }

    // Every component that must be mended is owed part of the class's weight, in proportion to what mending it costs: then
    // each has the same contribution per cost, that of mending them all together.
    private void ShareOut(int j)
    {
        double total = 0;
        int left = 0;
        for (int m = classes.Start[j]; m < classes.Start[j + 1]; m++)
        {
            double still = StillBroken[classes.Member[m]];
            if (still == 0) continue;
            total += still * effects.MendCost[classes.Member[m]];
            left++;
        }

        for (int m = classes.Start[j]; m < classes.Start[j + 1]; m++)
        {
            double cost = effects.MendCost[classes.Member[m]];
            share[m] = left == 0 || double.IsInfinity(total) ? 0
                : weight[j] * classOpen[j] * (total > 0 ? cost / total : 1.0 / left);
        }
    }

    private void Gather(int c)
    {
        double sum = classes.Single[c] is >= 0 and var single ? weight[single] : 0;
        for (int e = classes.EntryStart[c]; e < classes.EntryStart[c + 1]; e++) sum += share[classes.Entry[e]];
        pull[c] = sum;
        Work += classes.EntryStart[c + 1] - classes.EntryStart[c];
    }

    private void Rescore(int action)
    {
        double sum = 0;
        for (int i = effects.Start[action]; i < effects.Start[action + 1] && !tried[action]; i++)
        {
            int c = effects.Component[i];
            sum += effects.Success[i] * StillBroken[c] * pull[c];
        }

        score[action] = sum;
        Work += effects.Start[action + 1] - effects.Start[action];
    }
}
