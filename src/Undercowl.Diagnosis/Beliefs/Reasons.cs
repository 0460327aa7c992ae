using Undercowl.Diagnosis.Answers;
using Undercowl.Diagnosis.Engine;
using Undercowl.Inference;

namespace Undercowl.Diagnosis.Beliefs;

/// <summary>The weight of each finding, and of what came of each remedy, for one cause as found, in decibans.</summary>
internal static class Reasons
{
    public static WhyAnswer For(JobNetwork network, AspectInstance aspect, int state)
    {
        var node = network.Conditions.First(aspect);
        var order = network.Projection.Live.Index().ToDictionary(e => e.Item.Id.ToString(), e => e.Index);
        (string Label, string What)[] laid = [.. network.Laid.Select(l => (l.Label, Describe(network.Model, l)))
            .Concat(network.Results.Select(r => (r.Label, Describe(network.Model, r)))).OrderBy(l => order[l.Label])];
        var bound = 0.0;
        var before = Decibans.Of(Probability(0, -1, complaints: false));
        var prior = before;
        var all = Probability(laid.Length, -1);
        var posterior = Decibans.Of(all);
        var weights = new List<WeightAnswer>();
        for (var i = -1; i < laid.Length; i++)
        {
            var after = Decibans.Of(Probability(i + 1, -1));
            var without = Decibans.Of(Probability(laid.Length, i, complaints: i >= 0));
            weights.Add(i < 0
                ? new WeightAnswer(JobNetwork.ComplaintLabel, "the complaint", after - before, posterior - without)
                : new WeightAnswer(laid[i].Label, laid[i].What, after - before, posterior - without));
            before = after;
        }

        return new WhyAnswer(1, aspect.CauseId(state), Words.Cause(aspect, state), prior, posterior, all, bound, weights);

        // Belief from the first findings, one of them left out.
        double Probability(int count, int without, bool complaints = true)
        {
            var kept = laid.Take(count).Where((_, i) => i != without).Select(l => l.Label).ToHashSet();
            var posterior = Elimination.Run(network.Evidence(kept.Contains, complaints), network.Options with { Wanted = [node] });
            bound = Math.Max(bound, posterior.ErrorBound);
            return posterior.Marginal(node)[state];
        }
    }

    public static string Describe(EngineModel model, LaidFinding laid) =>
        $"{laid.Check.Name}{Words.At(model, laid.Check.At, laid.Finding.Body.Place.Text)}: {Words.Reading(laid.Check, laid.Finding.Body.Value)}";

    /// <summary>The remedy in words, and what came of it.</summary>
    public static string Describe(EngineModel model, LaidResult laid)
    {
        var remedy = model.Remedies.First(r => r.Id == laid.Remedy.Body.Action);
        return $"{remedy.Name}{Words.At(model, remedy.Part, laid.Remedy.Body.Place.Text)}: {Words.Result(laid.Came)}";
    }

    /// <summary>The finding or result of that label in words; the complaint when it is neither.</summary>
    public static string Describe(JobNetwork network, string label) =>
        network.Laid.FirstOrDefault(l => l.Label == label) is { } laid ? Describe(network.Model, laid)
        : network.Results.FirstOrDefault(r => r.Label == label) is { } result ? Describe(network.Model, result) : "the complaint";
}
