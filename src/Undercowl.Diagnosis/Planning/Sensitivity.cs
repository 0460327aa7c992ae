using System.Text.Json;
using Undercowl.Diagnosis.Answers;
using Undercowl.Diagnosis.Beliefs;
using Undercowl.Jobs;
using Undercowl.Knowledge;

namespace Undercowl.Diagnosis.Planning;

/// <summary>
/// Moves each number that touches a job to the ends of the range that its source states, by itself, and sees whether another step comes first. It tells
/// who keeps the knowledge which estimates to replace.
/// </summary>
internal static class Sensitivity
{
    /// <summary>Priors of so many conditions, the likeliest first; those that remain unlikely at three times the odds do not change a step.</summary>
    private const int Priors = 40;

    /// <summary>Minutes and prices of so many of the leading steps.</summary>
    private const int Steps = 6;

    public static SensitivityAnswer Of(Workbench bench, Job job)
    {
        var diagnosis = bench.Open(job);
        var leading = diagnosis.Next(Steps).Proposals;
        var next = NextSteps.Named(leading[0]);
        FactorAnswer[] all = [.. Audit.All(diagnosis.Belief.Network, diagnosis.Belief), .. leading.SelectMany(s => Efforts(bench.Knowledge, s)).DistinctBy(f => f.Address)];
        var sources = bench.Knowledge.Sources.ToDictionary(s => s.Id);
        FactorAnswer[] ranged = [.. all.Where(f => Range(f) > 1 && f.Value > 0)];
        FactorAnswer[] tried = [.. ranged.Where(f => f.Use != "prior"), .. ranged.Where(f => f.Use == "prior").Take(Priors)];
        var found = new TurningNumber?[tried.Length];
        Parallel.For(0, tried.Length, i => found[i] = Turning(tried[i]));
        return new SensitivityAnswer(1, next, [.. found.OfType<TurningNumber>()], tried.Length, all.Length - tried.Length);

        double Range(FactorAnswer factor) => factor.Source is { } id && sources.GetValueOrDefault(id) is { } source ? (IsChance(factor) ? source.Odds : source.Times) ?? 1 : 1;

        TurningNumber? Turning(FactorAnswer factor)
        {
            foreach (var times in new[] { Range(factor), 1 / Range(factor) })
            {
                var to = Moved(factor, times);
                try
                {
                    var instead = NextSteps.Named(bench.With([(factor.Address, to)]).Open(job).Next(1).Proposals[0]);
                    if (instead != next)
                    {
                        return new TurningNumber(factor, to, instead);
                    }
                }
                catch (Exception error) when (error is JsonException or DiagnosisException)
                {
                    // What the knowledge cannot be is no doubt about it.
                }
            }

            return null;
        }
    }

    /// <summary>A chance is moved in its odds, other numbers as they are.</summary>
    private static double Moved(FactorAnswer factor, double times) => IsChance(factor) ? factor.Value * times / (1 - factor.Value + factor.Value * times) : factor.Value * times;

    private static bool IsChance(FactorAnswer factor) => factor is { Unit: null, Value: < 1 } && factor.Address.Split('/')[^1] is not ("spread" or "median" or "generic-spread");

    private static IEnumerable<FactorAnswer> Efforts(KnowledgeBase knowledge, ProposedStep step)
    {
        FactorAnswer Of(string address, double value, string unit, string source, string what)
        {
            var cited = knowledge.Sources.First(s => s.Id == source);
            return new FactorAnswer(address, value, unit, source, Audit.Kind(cited.Kind), cited.Cite, "effort", what);
        }

        if (knowledge.Checks.FirstOrDefault(c => c.Id == step.Id) is { } check)
        {
            yield return Of($"checks/{check.Id}/minutes", check.Minutes, "min", check.Source, $"{check.Name}: minutes");
        }

        if (knowledge.Remedies.FirstOrDefault(r => r.Id == step.Id) is { } remedy)
        {
            yield return Of($"remedies/{remedy.Id}/minutes", remedy.Minutes, "min", remedy.Source, $"{remedy.Name}: minutes");
            yield return Of($"remedies/{remedy.Id}/parts", remedy.Parts, "currency", remedy.Source, $"{remedy.Name}: price of parts");
        }
    }
}
