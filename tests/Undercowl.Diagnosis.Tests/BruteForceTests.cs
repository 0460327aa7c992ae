using System.Globalization;
using Undercowl.Diagnosis.Readings;
using Undercowl.Diagnosis.Tests.Fixtures;
using Undercowl.Diagnosis.Tests.Twins;
using Undercowl.Jobs;
using Undercowl.Knowledge;
using Xunit;

namespace Undercowl.Diagnosis.Tests;

/// <summary>Oracle: every possible world of the small engine, one at a time (independent of the graph and of inference).</summary>
public sealed class BruteForceTests
{
    private const double Tolerance = 1e-10;

    private static readonly Workbench Workbench = new(SmallEngine.Knowledge, "sha256:" + new string('0', 64));

    public static TheoryData<int> Seeds => [.. Enumerable.Range(1, 30)];

    [Theory]
    [MemberData(nameof(Seeds))]
    public void Beliefs_as_found_and_now_and_the_weight_of_the_evidence_equal_the_sum_over_all_worlds(int seed)
    {
        var job = RandomJob(seed);
        var diagnosis = Workbench.Open(job);
        var network = diagnosis.Network;
        var companies = network.Laid.GroupBy(l => l.Company).Select(g => g.ToList()).ToList();
        var likelihoods = companies.ConvertAll(c =>
            ReadingLikelihood.Of(new ReadingGroup(c[0].Check, c[0].Levels, c[0].Doubt, [.. c.Select(l => l.Reading)], c[0].Kilovolts)));
        var asFound = new Dictionary<(int, int), double>();
        var now = new Dictionary<(int, int), double>();
        var total = 0.0;
        Choosing.All(world =>
        {
            var engine = new TwinEngine(SmallEngine.Knowledge, SmallEngine.Layout, world);
            var complaint = SmallEngine.Knowledge.Complaints[0];
            world.Multiply(complaint.Given[SmallEngine.Knowledge.Quantities.First(q => q.Id == complaint.Quantity).Levels[engine.Level(complaint.Quantity, 0, complaint.SetUp)]]);
            foreach (var entry in job.Entries)
            {
                engine.Apply(entry);
                var at = companies.FindIndex(c => c[0].Finding.Id == entry.Id);
                if (at >= 0 && likelihoods[at] is { } likelihood)
                {
                    world.Multiply(Seen(world, engine, companies[at][0], likelihood));
                }
            }

            foreach (var aspect in network.Model.Aspects)
            {
                var first = engine.AsFound(aspect.Part.Kind.Id, aspect.Part.Place, aspect.Aspect);
                var last = engine.Now(aspect.Part.Kind.Id, aspect.Part.Place, aspect.Aspect);
                asFound[(aspect.Index, first)] = asFound.GetValueOrDefault((aspect.Index, first)) + world.Weight;
                now[(aspect.Index, last)] = now.GetValueOrDefault((aspect.Index, last)) + world.Weight;
            }

            total += world.Weight;
        });

        Assert.Equal(Math.Log(total), diagnosis.Belief.Posterior.LogEvidence, 1e-9);
        foreach (var aspect in network.Model.Aspects)
        {
            for (var s = 0; s < aspect.StateNames.Length; s++)
            {
                Assert.Equal(asFound.GetValueOrDefault((aspect.Index, s)) / total, diagnosis.Belief.AsFound(aspect, s), Tolerance);
                Assert.Equal(now.GetValueOrDefault((aspect.Index, s)) / total, diagnosis.Belief.Now(aspect, s), Tolerance);
            }
        }
    }

    private static double Seen(Choosing world, TwinEngine engine, LaidFinding laid, double[] likelihood)
    {
        var finding = laid.Finding.Body;
        var lane = finding.Place.Cylinders.Count > 0 ? finding.Place.Cylinders[0] : 0;
        var level = laid.Check.Likelihood.Quantity is { } quantity
            ? engine.Level(quantity, lane, finding.SetUp)
            : engine.Sitting(laid.Check.Likelihood.Aspect!, finding.Place.Text);
        var lost = laid.Tool >= 0 && world.Draw("clip", [0.95, 0.05]) == 1;
        return likelihood[lost ? ^1 : level];
    }

    /// <summary>A job of up to six deeds and findings with swaps, remedies and occasions between them.</summary>
    private static Job RandomJob(int seed)
    {
        var random = new Random(seed);
        var writer = Story.Writer("dock", seed);
        var job = Job.Empty;
        void Add(EntryBody body) => job = job.With(writer.Next(job, body));
        Add(Workbench.Opening("small", "no-start"));
        var occasion = "opening";
        var heat = "cold";
        for (var i = 0; i < 4 + random.Next(3); i++)
        {
            switch (random.Next(10))
            {
                case 0:
                    Add(new Swap("coil", Place.Parse("cyl:1"), Place.Parse("cyl:2")));
                    break;
                case 1:
                    var remedy = SmallEngine.Knowledge.Remedies[random.Next(3)];
                    Add(new Jobs.Remedy(remedy.Id, 1, remedy.Part == "stop" ? Place.Parse("side:engine") : remedy.Part == "plug" ? Place.Parse("cyl:1") : Cylinder(random)));
                    break;
                case 2:
                    heat = random.Next(2) == 0 ? "hot" : "cold";
                    Add(new Occasion(Enum.Parse<Heat>(heat, true), "time passed", random.Next(2) == 0 ? null : [PartId.Parse("stop"), PartId.Parse("plug@cyl:1")]));
                    occasion = job.Entries[^1].Id.ToString();
                    break;
                default:
                    var check = SmallEngine.Knowledge.Checks[random.Next(SmallEngine.Knowledge.Checks.Count)];
                    var place = check.At == "engine" ? Place.Engine : check.Id == "plug-look" ? Place.Parse("cyl:1") : Cylinder(random);
                    Add(new Finding(check.Id, 1, place, SetUp(random, heat), occasion, random.Next(4) == 0 ? "caller" : "technician", Reading(random, check)));
                    break;
            }
        }

        return job;
    }

    private static Dictionary<string, string> SetUp(Random random, string heat)
    {
        var setUp = new Dictionary<string, string> { ["heat"] = heat };
        foreach (var (key, value) in ((string, string)[])[("stop-wire", "off"), ("booster", "on"), ("no-coil@cyl:1", "yes"), ("known-good@cyl:2", "plug"), ("forced@cyl:1", "dry")])
        {
            if (random.Next(5) == 0)
            {
                setUp[key] = value;
            }
        }

        return setUp;
    }

    private static Reading Reading(Random random, Check check) => check.Choices.Count > 0
        ? new ChoiceReading(check.Choices[random.Next(check.Choices.Count)].Id)
        : random.Next(3) == 0 ? new OpenReading() : new NumberReading(Measured.Of(random.Next(60, 300).ToString(CultureInfo.InvariantCulture), "ohm"));

    private static Place Cylinder(Random random) => Place.Parse($"cyl:{1 + random.Next(2)}");
}
