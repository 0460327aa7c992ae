using Undercowl.Diagnosis.Readings;
using Undercowl.Diagnosis.Tests.Fixtures;
using Undercowl.Diagnosis.Tests.Twins;
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
        var job = RandomJobs.Written(Workbench, RandomJobs.Mixed(seed), seed);
        var diagnosis = Workbench.Open(job);
        var network = diagnosis.Network;
        var companies = network.Laid.GroupBy(l => l.Company).Select(g => g.ToList()).ToList();
        var likelihoods = companies.ConvertAll(c =>
            ReadingLikelihood.Of(new ReadingGroup(c[0].Check, c[0].Levels, c[0].Doubt, [.. c.Select(l => l.Reading)], c[0].Kilovolts)));
        // Set-ups that were reached count once for each copy of the quantity that might have forbidden them.
        var groups = network.Reached.Where(r => !r.Signal.IsConstant).GroupBy(r => (r.Signal.Node, string.Join(',', r.Signal.Map))).ToList();
        var setUps = groups.SelectMany((g, i) => g.Select(r => (Reached: r, Group: i))).ToList();
        var asFound = new Dictionary<(int, int), double>();
        var now = new Dictionary<(int, int), double>();
        var total = 0.0;
        Choosing.All(world =>
        {
            var engine = new TwinEngine(SmallEngine.Knowledge, SmallEngine.Layout, world);
            var complaint = SmallEngine.Knowledge.Complaints[0];
            world.Multiply(complaint.Given[SmallEngine.Knowledge.Quantities.First(q => q.Id == complaint.Quantity).Levels[engine.Level(complaint.Quantity, 0, complaint.SetUp)]]);
            double[] chances = [.. groups.Select(_ => 1.0)];
            foreach (var entry in job.Entries)
            {
                engine.Apply(entry);
                var at = companies.FindIndex(c => c[0].Finding.Id == entry.Id);
                if (at >= 0 && likelihoods[at] is { } likelihood)
                {
                    world.Multiply(Seen(world, engine, companies[at][0], likelihood));
                }

                foreach (var (reached, group) in setUps.Where(r => r.Reached.By.Finding.Id == entry.Id))
                {
                    chances[group] = Math.Min(chances[group], reached.PerLevel[engine.Level(reached.Quantity, 0, reached.By.Finding.Body.SetUp)]);
                }
            }

            Array.ForEach(chances, world.Multiply);

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
}
