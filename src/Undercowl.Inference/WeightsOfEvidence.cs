namespace Undercowl.Inference;

/// <summary>
/// What each piece of evidence weighs for a state of a node: ten times the common logarithm of the ratio of the odds after and before
/// (decibans; I. J. Good, weight of evidence). Stepwise weights depend on the order and add up; the other two kinds do not add up.
/// </summary>
/// <param name="Prior">Log odds without any of it, in decibans.</param>
/// <param name="Posterior">Log odds with all of it, in decibans.</param>
/// <param name="Probability">The same as a probability.</param>
/// <param name="Stepwise">For each piece what it added to all before it.</param>
/// <param name="LeaveOneOut">For each piece what would be lost without it, given all others.</param>
/// <param name="StepwiseAtLeast">For each piece whether its stepwise weight began or ended at <see cref="Most"/>, so that it may be larger.</param>
/// <param name="LeaveOneOutAtLeast">The same for what would be lost.</param>
/// <param name="ErrorBound">No probability that went into these is off by more; 0 when exact.</param>
public sealed record WeightsOfEvidence(
    double Prior,
    double Posterior,
    double Probability,
    IReadOnlyList<double> Stepwise,
    IReadOnlyList<double> LeaveOneOut,
    IReadOnlyList<bool> StepwiseAtLeast,
    IReadOnlyList<bool> LeaveOneOutAtLeast,
    double ErrorBound)
{
    /// <summary>
    /// Log odds beyond so many decibans either way are told as these. A probability may come out as 0, where evidence excludes a state or
    /// a sum within a bound leaves it out, and a weight without end could neither be added up nor written. Estimate: 1 in 10 to the 20th is no knowledge of anything.
    /// </summary>
    public const double Most = 200;

    /// <param name="pieces">How many there are.</param>
    /// <param name="with">The evidence of those pieces, by number from 0, that its argument admits.</param>
    /// <param name="node">The node.</param>
    /// <param name="state">Its state.</param>
    /// <param name="options">How the posteriors are worked out.</param>
    /// <exception cref="InferenceException">As <see cref="Elimination"/> raises it.</exception>
    public static WeightsOfEvidence Of(int pieces, Func<Func<int, bool>, Evidence> with, int node, int state, EliminationOptions options)
    {
        ArgumentNullException.ThrowIfNull(with);
        ArgumentNullException.ThrowIfNull(options);
        var bound = 0.0;
        var probability = 0.0;
        var upTo = new double[pieces + 1];
        for (var count = 0; count <= pieces; count++)
        {
            upTo[count] = LogOdds(i => i < count);
        }

        var all = upTo[pieces];
        var (stepwise, leftOut) = (new double[pieces], new double[pieces]);
        var (stepsCut, leftOutCut) = (new bool[pieces], new bool[pieces]);
        for (var piece = 0; piece < pieces; piece++)
        {
            stepwise[piece] = upTo[piece + 1] - upTo[piece];
            stepsCut[piece] = Cut(upTo[piece]) || Cut(upTo[piece + 1]);
        }

        var withAll = probability;
        for (var piece = 0; piece < pieces; piece++)
        {
            var without = piece == pieces - 1 ? upTo[piece] : LogOdds(i => i != piece);
            leftOut[piece] = all - without;
            leftOutCut[piece] = Cut(all) || Cut(without);
        }

        return new WeightsOfEvidence(upTo[0], all, withAll, stepwise, leftOut, stepsCut, leftOutCut, bound);

        static bool Cut(double logOdds) => Math.Abs(logOdds) >= Most;

        // The odds against are summed up and not taken from 1: near certainty that would leave rounding only.
        double LogOdds(Func<int, bool> kept)
        {
            var posterior = Elimination.Run(with(kept), options with { Wanted = [node] });
            bound = Math.Max(bound, posterior.ErrorBound);
            var marginal = posterior.Marginal(node);
            probability = marginal[state];
            var against = 0.0;
            for (var s = 0; s < marginal.Length; s++)
            {
                against += s == state ? 0 : marginal[s];
            }

            return Math.Clamp(10 * Math.Log10(probability / against), -Most, Most);
        }
    }
}
