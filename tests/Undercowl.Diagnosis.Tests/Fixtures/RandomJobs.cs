using System.Globalization;
using Undercowl.Jobs;
using Undercowl.Knowledge;

namespace Undercowl.Diagnosis.Tests.Fixtures;

/// <summary>What might be written down about the small engine: deeds, and findings in set-ups of every sort. From a seed.</summary>
internal static class RandomJobs
{
    private static readonly (string Key, string Value)[] SetUps =
    [
        ("stop-wire", "off"), ("booster", "on"), ("no-coil@cyl:1", "yes"), ("known-good@cyl:2", "plug"), ("forced@cyl:1", "dry"), ("engine", "popping"), ("engine", "running"),
    ];

    /// <summary>Up to six deeds and findings in their order, one device.</summary>
    public static List<EntryBody> Mixed(int seed)
    {
        var random = new Random(seed);
        var bodies = new List<EntryBody>();
        var heat = "cold";
        for (var i = 0; i < 4 + random.Next(3); i++)
        {
            bodies.Add(random.Next(10) < 3 ? Deed(random, ref heat) : Found(random, heat));
        }

        // From a sequence of its own, so that the rest of a seed's job is what it was.
        var asked = new Random(-seed);
        for (var i = seed % 4 == 2 ? 1 + asked.Next(2) : 0; i > 0; i--)
        {
            bodies.Insert(asked.Next(bodies.Count), Answer(asked, SmallEngine.Knowledge));
        }

        return bodies;
    }

    /// <summary>An answer of the interview.</summary>
    public static Intake Answer(Random random, KnowledgeBase knowledge)
    {
        var question = knowledge.Intake[random.Next(knowledge.Intake.Count)];
        return new Intake(question.Id, question.Answers[random.Next(question.Answers.Count)].Id, random.Next(3) == 0 ? "caller" : null, random.Next(4) == 0);
    }

    /// <summary>A swap, a remedy or a new occasion.</summary>
    /// <param name="random">Draws.</param>
    /// <param name="heat">The heat, which an occasion may change.</param>
    public static EntryBody Deed(Random random, ref string heat)
    {
        switch (random.Next(3))
        {
            case 0:
                return new Swap("coil", Place.Parse("cyl:1"), Place.Parse("cyl:2"));
            case 1:
                var remedy = SmallEngine.Knowledge.Remedies[random.Next(SmallEngine.Knowledge.Remedies.Count)];
                return new Jobs.Remedy(remedy.Id, 1, remedy.Part == "stop" ? Place.Parse("side:engine") : remedy.Part == "plug" ? Place.Parse("cyl:1") : Cylinder(random))
                {
                    Result = random.Next(3) == 0 ? null : (RemedyResult)random.Next(Enum.GetValues<RemedyResult>().Length),
                };
            default:
                heat = random.Next(2) == 0 ? "hot" : "cold";
                return new Occasion(Enum.Parse<Heat>(heat, true), "time passed", random.Next(2) == 0 ? null : [PartId.Parse("stop"), PartId.Parse("plug@cyl:1")]);
        }
    }

    public static Finding Found(Random random, string heat)
    {
        var check = SmallEngine.Knowledge.Checks[random.Next(SmallEngine.Knowledge.Checks.Count)];
        var place = check.At == "engine" ? Place.Engine : check.Id == "plug-look" ? Place.Parse("cyl:1") : Cylinder(random);
        var setUp = new Dictionary<string, string> { ["heat"] = heat };
        foreach (var (key, value) in SetUps)
        {
            if (random.Next(5) == 0)
            {
                setUp[key] = value;
            }
        }

        return new Finding(check.Id, 1, place, setUp, "as written", random.Next(4) == 0 ? "caller" : "technician", Reading(random, check));
    }

    /// <summary>The small engine's job with these entries, one after the other.</summary>
    public static Job Written(Workbench workbench, IEnumerable<EntryBody> bodies, int seed = 1)
    {
        var writer = Story.Writer("dock", seed);
        var job = Job.Empty.With(writer.Next(Job.Empty, workbench.Opening("small", "no-start")));
        foreach (var body in bodies)
        {
            job = job.With(writer.Next(job, body));
        }

        return job;
    }

    private static Reading Reading(Random random, Check check) =>
        random.Next(12) == 0 ? new NotDoneReading("seized")
        : check.Choices.Count > 0 ? new ChoiceReading(check.Choices[random.Next(check.Choices.Count)].Id)
        : random.Next(3) == 0 ? new OpenReading()
        : new NumberReading(Measured.Of(random.Next(60, 300).ToString(CultureInfo.InvariantCulture), "ohm"));

    private static Place Cylinder(Random random) => Place.Parse($"cyl:{1 + random.Next(2)}");
}
