using Undercowl.Diagnosis.Answers;
using Undercowl.Diagnosis.Engine;
using Undercowl.Diagnosis.Readings;
using Undercowl.Inference;

namespace Undercowl.Diagnosis.Beliefs;

/// <summary>The weight of each finding and answer, and of what came of each remedy, for one cause as found, in decibans.</summary>
internal static class Reasons
{
    public static WhyAnswer For(JobNetwork network, AspectInstance aspect, int state)
    {
        var node = network.Conditions.First(aspect);
        var order = network.Projection.Live.Index().ToDictionary(e => e.Item.Id.ToString(), e => e.Index);
        (string Label, string What, Told Told)[] laid = [.. network.Laid.Select(l => (l.Label, What: Describe(network.Model, l), Told: Told.Of(network.Model, l)))
            .Concat(network.Answers.Select(a => (a.Label, What: Describe(a), Told: new Told(Describe(a), "", "", ""))))
            .Concat(network.Results.Select(r => (r.Label, What: Describe(network.Model, r), Told: new Told(Describe(network.Model, r), "", "", "")))).OrderBy(l => order[l.Label])];
        // The complaint is the first piece; what was found and done follows in the order of the log.
        string[] what = ["the complaint", .. laid.Select(l => l.What)];
        var weights = WeightsOfEvidence.Of(
            what.Length,
            kept => network.Evidence(laid.Where((_, i) => kept(i + 1)).Select(l => l.Label).ToHashSet().Contains, kept(0)),
            node,
            state,
            network.Options);
        WeightAnswer[] answers = [.. what.Select((w, i) => new WeightAnswer(i == 0 ? JobNetwork.ComplaintLabel : laid[i - 1].Label, w, weights.Stepwise[i], weights.LeaveOneOut[i], weights.StepwiseAtLeast[i], weights.LeaveOneOutAtLeast[i]))];
        return new WhyAnswer(
            1, aspect.CauseId(state), Words.Cause(aspect, state), weights.Prior, weights.Posterior, weights.Probability, weights.ErrorBound, answers, Saying.Of(Words.Cause(aspect, state), weights, [Told.Complaint, .. laid.Select(l => l.Told)]));
    }

    public static string Describe(EngineModel model, LaidFinding laid) =>
        Said(Told.Of(model, laid));

    private static string Said(Told told) => $"{told.What}{told.At}: {told.Reading}{told.After}";

    /// <summary>The question as it is put, and the answer.</summary>
    public static string Describe(LaidAnswer laid) => $"{laid.Given.Question.Ask} {laid.Given.Question.Answers[laid.Given.Index].Name}";

    /// <summary>The remedy in words, and what came of it.</summary>
    public static string Describe(EngineModel model, LaidResult laid)
    {
        var remedy = model.Knowledge.RemedyOf(laid.Remedy.Body.Action)!;
        return $"{remedy.Name}{Words.At(model, remedy.Part, laid.Remedy.Body.Place.Text)}: {Words.Result(laid.Came)}";
    }

    /// <summary>The finding, answer or result of that label in words; the complaint when it is neither.</summary>
    public static string Describe(JobNetwork network, string label) =>
        network.Laid.FirstOrDefault(l => l.Label == label) is { } laid ? Describe(network.Model, laid)
        : network.Answers.FirstOrDefault(a => a.Label == label) is { } answer ? Describe(answer)
        : network.Results.FirstOrDefault(r => r.Label == label) is { } result ? Describe(network.Model, result) : "the complaint";
}
