namespace Undercowl.Inference;

/// <summary>
/// How badly findings go together. The measure is ln(product of P(e_i) / P(e)): above 0 the findings are less likely
/// together than if they had nothing to do with each other; about 0 or below they support each other. For contradictory
/// findings it is plus infinity, and <see cref="Irreducible"/> names a smallest-by-removal set of labels that cannot all
/// be true; withdrawing any one of those mends that contradiction (there may be another).
/// Findings that share a label count as one. Interventions are not findings and stay in force throughout.
/// </summary>
public sealed class Conflict
{
    private readonly Lazy<IReadOnlyList<ConflictShare>> _shares;

    private Conflict(double measure, Func<IReadOnlyList<ConflictShare>> shares, IReadOnlyList<string> irreducible)
    {
        Measure = measure;
        _shares = new Lazy<IReadOnlyList<ConflictShare>>(shares);
        Irreducible = irreducible;
    }

    public double Measure { get; }

    /// <summary>
    /// One entry a label, the most at odds with the rest first; empty when the findings contradict each other. Each costs
    /// a run of its own, so they are worked out when first asked for; the evidence must not have changed until then.
    /// </summary>
    public IReadOnlyList<ConflictShare> Shares => _shares.Value;

    /// <summary>Labels that cannot all be true although any fewer of them can; empty when the findings are possible.</summary>
    public IReadOnlyList<string> Irreducible { get; }

    public static Conflict Of(Evidence evidence, EliminationOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(evidence);
        // Totals only: nothing else is asked, and a lower bound would be no total.
        options = (options ?? EliminationOptions.Default) with { Wanted = [], AllowBounded = false };
        var labels = Labels(evidence);
        var all = LogEvidence(evidence, _ => true, options);
        if (double.IsNegativeInfinity(all))
            return new Conflict(double.PositiveInfinity, () => [], Shrink(evidence, labels, options));
        double[] alone = [.. labels.Select(label => LogEvidence(evidence, l => l == label, options))];
        return new Conflict(alone.Sum() - all, Shares, []);

        IReadOnlyList<ConflictShare> Shares() => [.. labels
            .Select((label, i) => new ConflictShare(label, alone[i] + LogEvidence(evidence, l => l != label, options) - all))
            .OrderByDescending(s => s.Measure)];
    }

    private static List<string> Labels(Evidence evidence)
    {
        var labels = new List<string>();
        foreach (var f in evidence.Findings)
        {
            if (!labels.Contains(f.Label))
                labels.Add(f.Label);
        }

        return labels;
    }

    private static double LogEvidence(Evidence evidence, Func<string, bool> keep, EliminationOptions options) =>
        Elimination.Run(evidence.Where(f => keep(evidence.Label(f))), options).LogEvidence;

    /// <summary>Takes labels away one at a time, for good whenever the rest still contradicts itself.</summary>
    private static List<string> Shrink(Evidence evidence, List<string> labels, EliminationOptions options)
    {
        var kept = new List<string>(labels);
        foreach (var label in labels)
        {
            if (double.IsNegativeInfinity(LogEvidence(evidence, l => l != label && kept.Contains(l), options)))
                kept.Remove(label);
        }

        return kept;
    }
}

/// <summary>ln(P(finding) P(others) / P(all)) of one label: how much less likely it is in this company than alone.</summary>
public sealed record ConflictShare(string Label, double Measure);
