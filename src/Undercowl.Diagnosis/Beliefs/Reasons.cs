using Undercowl.Diagnosis.Answers;
using Undercowl.Diagnosis.Engine;
using Undercowl.Inference;

namespace Undercowl.Diagnosis.Beliefs;

/// <summary>The weight of each finding for one cause as found, in decibans.</summary>
internal static class Reasons
{
    public static WhyAnswer For(JobNetwork network, AspectInstance aspect, int state)
    {
        var node = network.Conditions.First(aspect);
        var laid = network.Laid;
        var bound = 0.0;
        var before = Decibans.Of(Probability(0, -1, complaints: false));
        var prior = before;
        var all = Probability(laid.Count, -1);
        var posterior = Decibans.Of(all);
        var weights = new List<WeightAnswer>();
        for (var i = -1; i < laid.Count; i++)
        {
            var after = Decibans.Of(Probability(i + 1, -1));
            var without = Decibans.Of(Probability(laid.Count, i, complaints: i >= 0));
            weights.Add(i < 0
                ? new WeightAnswer(JobNetwork.ComplaintLabel, "the complaint", after - before, posterior - without)
                : new WeightAnswer(laid[i].Label, Describe(network.Model, laid[i]), after - before, posterior - without));
            before = after;
        }

        return new WhyAnswer(1, aspect.CauseId(state), Words.Cause(aspect, state), prior, posterior, all, bound, weights);

        // Belief from the first findings, one of them left out.
        double Probability(int count, int without, bool complaints = true)
        {
            var kept = laid.Take(count).Where((_, i) => i != without).Select(l => l.Label).ToHashSet();
            var posterior = Elimination.Run(network.Evidence(l => kept.Contains(l.Label), complaints), network.Options with { Wanted = [node] });
            bound = Math.Max(bound, posterior.ErrorBound);
            return posterior.Marginal(node)[state];
        }
    }

    public static string Describe(EngineModel model, LaidFinding laid) =>
        $"{laid.Check.Name}{Words.At(model, laid.Check.At, laid.Finding.Body.Place.Text)}: {Words.Reading(laid.Check, laid.Finding.Body.Value)}";
}
