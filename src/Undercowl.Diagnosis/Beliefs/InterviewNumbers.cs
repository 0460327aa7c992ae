using Undercowl.Diagnosis.Engine;
using Undercowl.Knowledge;

namespace Undercowl.Diagnosis.Beliefs;

/// <summary>The numbers by which answers of the interview and common causes touch an aspect: address, value, unit, source, and what it is.</summary>
internal static class InterviewNumbers
{
    /// <param name="network">The job.</param>
    /// <param name="touching">The nodes that touch what is asked.</param>
    public static IEnumerable<(string Address, double Value, string Source, string What)> Of(JobNetwork network, HashSet<int> touching)
    {
        AspectInstance[] aspects = [.. network.Model.Aspects.Where(a => a.Swayed.Length > 0 && touching.Contains(network.Conditions.First(a)))];
        var told = network.Answers.SelectMany(a => a.Given.Question.Tells, (a, t) => t.CommonCause).ToHashSet();
        foreach (var heard in network.CommonCauses.Where(h => h.Ties || told.Contains(h.Cause.Id)))
        {
            AspectInstance[] swayed = [.. aspects.Where(a => Array.Exists(a.Swayed, s => s.Cause == heard.Cause))];
            if (swayed.Length > 0)
            {
                yield return ($"common-causes/{heard.Cause.Id}/prior", heard.Cause.Prior, heard.Cause.Source, $"chance that it befell an engine: {heard.Cause.Name}");
            }

            foreach (var row in heard.Cause.Likelier.Where(l => Array.Exists(swayed, a => l.Aspect == $"{a.Part.Kind.Id}.{a.Aspect.Id}")))
            {
                yield return ($"common-causes/{heard.Cause.Id}/likelier/{KnowledgeNumbers.Key(heard.Cause.Likelier, row, l => l.Aspect)}/times", row.Times, row.Source, $"how many times likelier {string.Join(", ", row.Conditions.Values)} is: {heard.Cause.Name}");
            }
        }

        foreach (var answer in network.Answers)
        {
            var question = answer.Given.Question;
            var id = question.Answers[answer.Given.Index].Id;
            yield return ($"intake/{question.Id}/usually/{id}", question.Usually[id], question.Source!, $"chance of the answer {id} as a rule: {question.Ask}");
            foreach (var (telling, i) in question.Tells.Select((t, i) => (t, i)))
            {
                foreach (var (level, row) in telling.Given)
                {
                    yield return ($"intake/{question.Id}/tells/{telling.Quantity ?? i.ToString(System.Globalization.CultureInfo.InvariantCulture)}/given/{level}/{id}", row[id], telling.Source, $"chance of the answer {id} where {telling.CommonCause ?? telling.Quantity} is {level}: {question.Ask}");
                }
            }
        }
    }
}
