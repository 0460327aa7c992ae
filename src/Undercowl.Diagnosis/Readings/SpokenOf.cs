using Undercowl.Diagnosis.Engine;
using Undercowl.Diagnosis.Graph;
using Undercowl.Jobs;
using Undercowl.Knowledge;

namespace Undercowl.Diagnosis.Readings;

/// <summary>
/// How the common causes stand in a job by what was answered and by the choices seen of the aspects that they bear on, each cause heard by
/// itself. One that says so ties what it bears on once something of that was seen that speaks for or against it: until then what is
/// found of one part tells nothing of the others, and a tie would only make the sums larger. The more is seen, the more it ties: a cause
/// as good as known tells of what was not seen yet most of all.
/// </summary>
internal static class SpokenOf
{
    /// <summary>By so much what was seen must move the chance. Estimate.</summary>
    private const double Moved = 0.02;

    public static IReadOnlyList<Heard> In(EngineModel model, Projection projection)
    {
        GivenAnswer[] answers = [.. GivenAnswer.In(model.Knowledge, projection)];
        (string Aspect, Dictionary<string, double> Given)[] seen = [.. Seen(model.Knowledge, projection), .. SeenInQuantities(model, projection)];
        return
        [
            .. model.CommonCauses.Select(cause =>
            {
                var after = After(model, cause, answers, seen);
                return new Heard(cause, after, cause.Together && (Moves([]) >= Moved || Moves(answers) >= Moved));

                double Moves(GivenAnswer[] heard) => Math.Abs(After(model, cause, heard, seen) - After(model, cause, heard, []));
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
            .Select(f => (Check: knowledge.Today(f.Body.Check), f.Body.Place.Text, (f.Body.Value as ChoiceReading)?.Choice)).Distinct())
        {
            if (choice is not null && checks.TryGetValue(id, out var check) && check.Choices.Any(c => c.Id == choice))
            {
                yield return (check.Likelihood.Aspect!, check.Likelihood.Given.ToDictionary(row => row.Key, row => row.Value.GetValueOrDefault(choice)));
            }
        }
    }

    /// <summary>
    /// The choices seen of a quantity, as they tell of what passes at that place (a liquid in a cylinder, which only shows in what it wets): by the level that
    /// the quantity would be at were that condition alone amiss. A choice seen again at the same place counts once.
    /// </summary>
    private static IEnumerable<(string Aspect, Dictionary<string, double> Given)> SeenInQuantities(EngineModel model, Projection projection)
    {
        var borne = model.Aspects.Where(a => a.Aspect.Passing && a.Swayed.Any(s => s.Cause.Together)).ToLookup(a => a.Part.Place);
        var checks = model.Knowledge.Checks.Where(c => c.Likelihood is { Quantity: not null, Model: LikelihoodModel.Table }).ToDictionary(c => c.Id);
        var conditions = new ConditionNodes(model, new NodeGraph(), []);
        var (laying, alone) = (new Laying(conditions, projection), new OneAmiss(conditions.Graph));
        foreach (var finding in projection.Findings.Select(f => f.Body).DistinctBy(f => (model.Knowledge.Today(f.Check), f.Place.Text, (f.Value as ChoiceReading)?.Choice)))
        {
            if (finding.Value is not ChoiceReading { Choice: var choice } || !borne.Contains(finding.Place.Text)
                || !checks.TryGetValue(model.Knowledge.Today(finding.Check), out var check) || check.Choices.All(c => c.Id != choice)
                || laying.Read(check, finding.Place.Text, laying.Copies(conditions.AsFound, finding.SetUp)) is not var (signal, levels))
            {
                continue;
            }

            foreach (var aspect in borne[finding.Place.Text])
            {
                yield return ($"{aspect.Part.Kind.Id}.{aspect.Aspect.Id}", aspect.StateNames.Select((name, s) => (name, s))
                    .ToDictionary(n => n.name, n => check.Likelihood.Given[levels[alone.Level(signal, conditions.First(aspect), n.s)]].GetValueOrDefault(choice)));
            }
        }
    }
}
