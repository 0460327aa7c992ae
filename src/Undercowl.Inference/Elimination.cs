namespace Undercowl.Inference;

/// <summary>
/// Computes the posterior of a network given evidence: exactly by sparse elimination when that fits in the row budget,
/// otherwise (unless forbidden) by a sum over the most likely joint states of rare roots with a proven error bound.
/// </summary>
public static class Elimination
{
    /// <summary>
    /// The posterior. Contradictory evidence is not an error here: see <see cref="Posterior.Possible"/>. Raises the
    /// row-budget fault when the exact sum does not fit and a bounded one is forbidden or does not fit either.
    /// </summary>
    public static Posterior Run(Evidence evidence, EliminationOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(evidence);
        options ??= EliminationOptions.Default;
        try
        {
            return new Posterior(evidence, options, Circuit.CompileOnce(evidence, options));
        }
        catch (InferenceException e) when (e.Fault == InferenceFault.RowBudget && options.AllowBounded)
        {
            return Bounded(evidence, options);
        }
    }

    /// <summary>The bounded sum at once, without trying the exact one; for comparing the two.</summary>
    public static Posterior Bounded(Evidence evidence, EliminationOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(evidence);
        options ??= EliminationOptions.Default;
        return new Posterior(evidence, options, new BoundedSum(evidence, options));
    }
}
