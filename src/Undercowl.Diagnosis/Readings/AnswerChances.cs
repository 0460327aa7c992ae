using Undercowl.Knowledge;

namespace Undercowl.Diagnosis.Readings;

/// <summary>
/// How likely each answer of a question is where several things are the case of what it tells: their rows multiplied as ratios to
/// the usual one, and scaled to sum to 1.
/// </summary>
internal static class AnswerChances
{
    /// <param name="question">The question.</param>
    /// <param name="there">The rows of what is the case.</param>
    /// <returns>The chance of each answer, in the question's order.</returns>
    public static double[] Of(IntakeQuestion question, IEnumerable<IReadOnlyDictionary<string, double>> there)
    {
        double[] row = [.. question.Answers.Select(a => question.Usually[a.Id])];
        foreach (var told in there)
        {
            for (var a = 0; a < row.Length; a++)
            {
                row[a] *= told[question.Answers[a].Id] / question.Usually[question.Answers[a].Id];
            }
        }

        var sum = row.Sum();
        return Array.ConvertAll(row, p => p / sum);
    }
}
