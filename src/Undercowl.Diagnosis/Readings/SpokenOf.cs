using Undercowl.Diagnosis.Engine;
using Undercowl.Jobs;
using Undercowl.Knowledge;

namespace Undercowl.Diagnosis.Readings;

/// <summary>
/// How the common causes stand in a job by what was answered and by the choices seen of the aspects that they bear on, each cause heard by
/// itself. One that says so ties what it bears on once something of that was seen that speaks for or against it, and while it is in
/// doubt: until then what is found of one part tells nothing of the others, and a tie would only make the sums larger.
/// </summary>
internal static class SpokenOf
{
    /// <summary>By so much what was seen must move the chance. Estimate.</summary>
    private const double Moved = 0.02;

    /// <summary>As good as known: this near to no or to yes. Estimate.</summary>
    private const double Known = 0.05;

    public static IReadOnlyList<Heard> In(EngineModel model, Projection projection)
    {
        GivenAnswer[] answers = [.. GivenAnswer.In(model.Knowledge, projection)];
        (string Aspect, Dictionary<string, double> Given)[] seen = [.. Seen(model.Knowledge, projection)];
        return
        [
            .. model.CommonCauses.Select(cause =>
            {
                var after = After(model, cause, answers, seen);
                var moved = Math.Abs(After(model, cause, [], seen) - cause.Prior) >= Moved;
                return new Heard(cause, after, cause.Together && moved && after is > Known and < 1 - Known);
            }),
        ];
    }

    private static double After(EngineModel model, CommonCause cause, GivenAnswer[] answers, (string Aspect, Dictionary<string, double> Given)[] seen)
    {
        var odds = cause.Prior / (1 - cause.Prior);
        foreach (var answer in answers)
        {
            foreach (var telling in answer.Question.Tells.Where(t => t.CommonCause == cause.Id))
            {
                odds *= answer.Of(telling);
            }
        }

        foreach (var (kind, given) in seen)
        {
            if (Array.Find(model.Aspects, a => $"{a.Part.Kind.Id}.{a.Aspect.Id}" == kind) is { } aspect && Array.Find(aspect.Swayed, s => s.Cause == cause) is { } swayed)
            {
                var (with, without) = swayed.Alone(aspect.Prior);
                odds *= Chance(aspect, with, given) / Chance(aspect, without, given);
            }
        }

        return odds / (1 + odds);
    }

    private static double Chance(AspectInstance aspect, double[] states, Dictionary<string, double> given)
    {
        var chance = 0.0;
        for (var s = 0; s < states.Length; s++)
        {
            chance += states[s] * given.GetValueOrDefault(aspect.StateNames[s]);
        }

        return chance;
    }

    /// <summary>The choices seen of an aspect: its <c>kind.aspect</c>, and the chance of that choice by condition. A choice seen again at the same place counts once.</summary>
    private static IEnumerable<(string Aspect, Dictionary<string, double> Given)> Seen(KnowledgeBase knowledge, Projection projection)
    {
        var checks = knowledge.Checks.Where(c => c.Likelihood is { Aspect: not null, Model: LikelihoodModel.Table }).ToDictionary(c => c.Id);
        foreach (var (id, _, choice) in projection.Findings
            .Select(f => (Check: knowledge.Aliases.GetValueOrDefault(f.Body.Check, f.Body.Check), f.Body.Place.Text, (f.Body.Value as ChoiceReading)?.Choice)).Distinct())
        {
            if (choice is not null && checks.TryGetValue(id, out var check) && check.Choices.Any(c => c.Id == choice))
            {
                yield return (check.Likelihood.Aspect!, check.Likelihood.Given.ToDictionary(row => row.Key, row => row.Value.GetValueOrDefault(choice)));
            }
        }
    }
}
