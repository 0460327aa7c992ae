using Undercowl.Diagnosis.Graph;
using Undercowl.Knowledge;

namespace Undercowl.Diagnosis.Readings;

/// <summary>
/// What answers tell of the conditions that an untied common cause bears on, of each aspect for itself: the chance of the answers in a state is
/// the average over whether the cause befell, given that state. No node is needed for it.
/// </summary>
internal static class HeardApart
{
    /// <param name="conditions">The engine's nodes.</param>
    /// <param name="causes">The common causes that tie nothing.</param>
    /// <param name="answers">The answers, in their order.</param>
    /// <returns>For each answer and aspect: the likelihood by state, given the answers before it, with the answer's label.</returns>
    public static IEnumerable<(int Node, double[] Likelihood, string Label)> Of(ConditionNodes conditions, IReadOnlyCollection<CommonCause> causes, IEnumerable<GivenAnswer> answers)
    {
        (GivenAnswer Answer, Telling Telling)[] told = [.. answers.SelectMany(a => a.Question.Tells.Where(t => t.CommonCause is not null), (a, t) => (a, t))];
        foreach (var aspect in told.Length == 0 ? [] : conditions.Model.Aspects)
        {
            foreach (var swayed in aspect.Swayed.Where(s => causes.Contains(s.Cause)))
            {
                var befell = swayed.Befell(aspect.Prior);
                var (before, times) = (Array.ConvertAll(befell, _ => 1.0), 1.0);
                foreach (var (answer, telling) in told.Where(t => t.Telling.CommonCause == swayed.Cause.Id))
                {
                    times *= answer.Of(telling);
                    var now = Array.ConvertAll(befell, p => 1 - p + p * times);
                    yield return (conditions.First(aspect), [.. now.Zip(before, (n, b) => n / b)], answer.Label);
                    before = now;
                }
            }
        }
    }
}
