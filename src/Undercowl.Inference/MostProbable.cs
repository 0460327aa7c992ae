namespace Undercowl.Inference;

/// <summary>
/// The most probable joint states of a few chosen nodes, everything else summed out: not the most probable state of the
/// whole network, which may disagree with it, nor the chosen nodes' marginals side by side.
/// </summary>
public static class MostProbable
{
    /// <summary>The most nodes that may be chosen.</summary>
    public const int MaximumChosen = 12;

    /// <summary>
    /// The <paramref name="count"/> most probable joint states (fewer when fewer are possible), most probable first, equal
    /// ones in order of their states. Exact; needs the elimination with the chosen nodes kept to fit in the row budget.
    /// </summary>
    public static IReadOnlyList<Explanation> Explanations(Evidence evidence, ReadOnlySpan<int> chosen, int count, EliminationOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(evidence);
        ArgumentOutOfRangeException.ThrowIfNegative(count);
        if (chosen.Length > MaximumChosen)
            throw new InferenceException(InferenceFault.Evidence, $"An explanation fixes at most {MaximumChosen} nodes, not {chosen.Length}; choose those that matter.");
        var rows = JointRows.Of(evidence, chosen.ToArray(), options ?? EliminationOptions.Default);
        var order = new int[rows.Probabilities.Length];
        for (var r = 0; r < order.Length; r++)
            order[r] = r;
        Array.Sort(order, (x, y) => Compare(rows, x, y));
        var explanations = new List<Explanation>();
        foreach (var r in order.AsSpan(0, Math.Min(count, order.Length)))
        {
            if (rows.Probabilities[r] > 0)
                explanations.Add(new Explanation(Array.ConvertAll(rows.States, s => s[r]), rows.Probabilities[r]));
        }

        return explanations;
    }

    private static int Compare(JointRows rows, int x, int y)
    {
        var c = rows.Probabilities[y].CompareTo(rows.Probabilities[x]);
        for (var i = 0; c == 0 && i < rows.States.Length; i++)
            c = rows.States[i][x].CompareTo(rows.States[i][y]);
        return c;
    }
}

/// <summary>One joint state of the chosen nodes, in their order, and its probability given the evidence.</summary>
public sealed record Explanation(int[] States, double Probability);
