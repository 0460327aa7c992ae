using System.Globalization;
using Undercowl.Diagnosis.Beliefs;
using Undercowl.Diagnosis.Tests.Fixtures;
using Undercowl.Knowledge;

namespace Undercowl.Diagnosis.Tests.Weights;

/// <summary>The weights of a check's readings on the first layout, and with the first complaint, that know it.</summary>
/// <param name="Check">The check.</param>
/// <param name="Example">Some reading of it, laid over the network.</param>
/// <param name="Readings">Each choice, "over range", and numbers over six decades.</param>
/// <param name="Seen">What the heaviest one does in a fresh job.</param>
internal sealed record CheckWeights(Check Check, LaidFinding Example, IReadOnlyList<ReadingWeight> Readings, SeenWeight Seen)
{
    public ReadingWeight Heaviest => Readings.MaxBy(r => Math.Round(r.Decibans, 9))!;

    /// <summary>Null where no layout knows the check.</summary>
    public static CheckWeights? Of(Check check)
    {
        foreach (var layout in Shop.Knowledge.Layouts)
        {
            if (Start(Shop.Knowledge, layout) is var story && story.Diagnosis.Network.Model.Checks.Contains(check) && Laid(story, check) is { } laid)
            {
                ReadingWeight[] readings = [.. ReadingWeight.Of(check, laid)];
                var heaviest = readings.MaxBy(r => Math.Round(r.Decibans, 9))!;
                return new CheckWeights(check, laid, readings, InAJob(layout, check, heaviest.Reading));
            }
        }

        return null;
    }

    /// <summary>What each of these choices (all, when none is named) weighs at most, given that it was one of them.</summary>
    public IEnumerable<double> Among(IReadOnlyList<string> choices)
    {
        double[][] chances = [.. (choices.Count > 0 ? choices : [.. Check.Choices.Select(c => c.Id)]).Select(c => ReadingWeight.Likelihood(Example, new Jobs.ChoiceReading(c)))];
        return chances.Select(of => of.Select((chance, level) => chance / chances.Sum(c => c[level])).ToArray()).Select(shares => 10 * Math.Log10(shares.Max() / shares.Min()));
    }

    private static Story Start(KnowledgeBase knowledge, EngineLayout layout) =>
        Shop.Story(knowledge, layout.Id, knowledge.Complaints.First(c => c.Only.Holds(layout)).Id);

    /// <summary>Some reading of the check, laid over the network; null where there is no place for it.</summary>
    private static LaidFinding? Laid(Story story, Check check)
    {
        string[] places = [.. Planning.Candidates.Places(story.Diagnosis.Network.Model, check)];
        if (places.Length < (check.Swap is null ? 1 : 2))
        {
            return null;
        }

        Find(story, check, check.Choices.Count > 0 ? check.Choices[0].Id : string.Create(CultureInfo.InvariantCulture, $"{(check.Number!.Low + check.Number.High) / 2} {check.Number.Unit}"));
        return story.Diagnosis.Network.Laid is [.., var last] && last.Check == check ? last : null;
    }

    private static Story Find(Story story, Check check, string reading)
    {
        var model = story.Diagnosis.Network.Model;
        return story.Find(new SaidFinding(check.Id, reading, Planning.Candidates.Places(model, check).First())
        {
            With = check.Swap is null ? null : model.Parts.Last(p => p.Kind.Id == check.Swap).Place,
        });
    }

    /// <summary>Measured from a job in which the same was done and the reading says nothing: that the engine could be cranked for it is no merit of the reading.</summary>
    private static SeenWeight InAJob(EngineLayout layout, Check check, string reading)
    {
        var mute = Shop.Knowledge with { Checks = [.. Shop.Knowledge.Checks.Select(c => c == check ? c with { Likelihood = Mute(c), Caps = [] } : c)] };
        var before = Causes(mute);
        var after = Causes(Shop.Knowledge);
        var most = after.MaxBy(c => Math.Round(Math.Abs(Moved(c)), 6));
        return new SeenWeight(most.Key, Moved(most));

        double Moved(KeyValuePair<string, double> cause) => Decibans.Of(cause.Value) - Decibans.Of(before[cause.Key]);

        Dictionary<string, double> Causes(KnowledgeBase knowledge)
        {
            var story = Start(knowledge, layout);
            return Find(story, story.Diagnosis.Knowledge.Checks.Single(c => c.Id == check.Id), reading == "over range" ? "open" : reading)
                .Diagnosis.Belief.Causes().ToDictionary(c => c.Cause, c => c.AsFound);
        }
    }

    /// <summary>The same form, and as likely a reading at every level.</summary>
    private static Likelihood Mute(Check check) => check.Likelihood with
    {
        Given = check.Likelihood.Given.ToDictionary(r => r.Key, _ => check.Choices.ToDictionary(c => c.Id, _ => 1.0 / check.Choices.Count)),
        Densities = check.Likelihood.Densities.ToDictionary(r => r.Key, _ => new DensityRow { Median = 1, Spread = 1 }),
        Outlier = check.Likelihood.Model == LikelihoodModel.Gap ? 1 : check.Likelihood.Outlier,
    };
}

/// <summary>The cause that a reading moved most, and by how many decibans.</summary>
internal sealed record SeenWeight(string Cause, double Signed)
{
    public double Decibans => Math.Abs(Signed);
}
