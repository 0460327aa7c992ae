using Undercowl.Diagnosis.Answers;
using Undercowl.Inference;

namespace Undercowl.Diagnosis.Beliefs;

/// <summary>Whether the findings of a job go together, and if they do not, which to look at again.</summary>
internal static class Disagreement
{
    /// <summary>Findings twenty times less likely together than apart. Estimate: below it a rare fault is the commoner reason.</summary>
    private const double WorthSaying = 3;

    private const int Named = 3;

    /// <summary>Null where the sums do not fit and the belief itself is only bounded.</summary>
    public static ConflictAnswer? Of(JobNetwork network)
    {
        try
        {
            var conflict = Conflict.Of(network.Evidence(), network.Options);
            return new ConflictAnswer(conflict.Measure, conflict.Measure < WorthSaying ? [] : [.. AtOdds(network, conflict.Shares)]);
        }
        catch (InferenceException e) when (e.Fault == InferenceFault.RowBudget)
        {
            return null;
        }
    }

    /// <summary>The worst, and with it only those that are at odds for themselves.</summary>
    private static IEnumerable<AtOddsAnswer> AtOdds(JobNetwork network, IReadOnlyList<ConflictShare> shares) =>
        shares.Where((s, i) => i == 0 || s.Measure > WorthSaying / 2).Take(Named).Select(s => new AtOddsAnswer(
            s.Label,
            Reasons.Describe(network, s.Label),
            s.Measure));
}
