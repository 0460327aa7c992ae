using System.Diagnostics.CodeAnalysis;

namespace Undercowl.Inference;

/// <summary>
/// Computes the posterior of a network given evidence: exactly by sparse elimination when that fits in the row budget,
/// otherwise (unless forbidden) by a sum over the most likely joint states of rare roots with a proven error bound.
/// </summary>
public static class Elimination
{
    private const int FewestCarried = 64;

    /// <summary>Where a sum stage by stage is only known to be within this, another way of summing may have left out less.</summary>
    private const double SaysLittle = 0.5;

    /// <summary>
    /// The posterior. Contradictory evidence is not an error here: see <see cref="Posterior.Possible"/>. Raises the
    /// row-budget fault when the exact sum does not fit and a bounded one is forbidden or does not fit either.
    /// </summary>
    public static Posterior Run(Evidence evidence, EliminationOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(evidence);
        options ??= EliminationOptions.Default;
        if (TryExact(evidence, options, out var exact))
            return exact;
        // Networks of few functions sometimes fit only in the classical way; it is given little, as it rarely helps.
        var classical = options with { Order = EliminationOrder.SparseRows, RowBudget = options.RowBudget / 8 };
        if (options.Order == EliminationOrder.Causal && TryExact(evidence, classical, out exact))
            return exact;
        Posterior? swept = null;
        // Fewer joint states at a time make a wider bound, and fit where more do not. Where it fitted and nothing was left, fewer would not leave more.
        for (var beam = options.Beam; options.AllowBounded && options.Stages.Count > 0 && swept is null && beam >= FewestCarried; beam /= 4)
            TrySwept(evidence, options with { Beam = beam }, out swept);
        if (swept is { Possible: true, ErrorBound: <= SaysLittle })
            return swept;
        if (!options.AllowBounded)
            throw new InferenceException(InferenceFault.RowBudget, $"The exact sum needs more than {options.RowBudget} rows; raise the row budget or give it fewer findings.");
        try
        {
            // Of two sums that each leave something out, the one that has more of the evidence's probability left out less.
            var bounded = Bounded(evidence, options);
            return swept is { Possible: true } && swept.LogEvidence >= bounded.LogEvidence ? swept : bounded;
        }
        catch (InferenceException e) when (e.Fault == InferenceFault.RowBudget && swept is { Possible: true })
        {
            return swept;
        }
    }

    /// <summary>The exact posterior, or false when it does not fit in the row budget.</summary>
    public static bool TryExact(Evidence evidence, EliminationOptions? options, [NotNullWhen(true)] out Posterior? posterior)
    {
        ArgumentNullException.ThrowIfNull(evidence);
        options ??= EliminationOptions.Default;
        try
        {
            posterior = new Posterior(evidence, options, Circuit.CompileOnce(evidence, options));
            return true;
        }
        catch (InferenceException e) when (e.Fault == InferenceFault.RowBudget)
        {
            posterior = null;
            return false;
        }
    }

    /// <summary>
    /// The sum stage by stage at once, without trying the exact one (see <see cref="EliminationOptions.Stages"/>): its error bound
    /// is 0 when no joint state had to be left out. False when it does not fit in the row budget (then there is no posterior), or
    /// leaves nothing (then the posterior is an impossible one).
    /// </summary>
    public static bool TrySwept(Evidence evidence, EliminationOptions options, [NotNullWhen(true)] out Posterior? posterior)
    {
        ArgumentNullException.ThrowIfNull(evidence);
        ArgumentNullException.ThrowIfNull(options);
        foreach (var way in SweepWay.All)
        {
            try
            {
                posterior = new Posterior(evidence, options, Circuit.CompileSwept(evidence, options, way));
                return posterior.Possible || posterior.ErrorBound == 0;
            }
            catch (InferenceException e) when (e.Fault == InferenceFault.RowBudget)
            {
            }
        }

        posterior = null;
        return false;
    }

    /// <summary>The bounded sum at once, without trying the exact one; for comparing the two.</summary>
    public static Posterior Bounded(Evidence evidence, EliminationOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(evidence);
        options ??= EliminationOptions.Default;
        return new Posterior(evidence, options, new BoundedSum(evidence, options));
    }
}
