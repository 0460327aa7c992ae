using Undercowl.Diagnosis.Tests.Fixtures;
using Undercowl.Diagnosis.Tests.Twins;
using Undercowl.Jobs;
using Xunit;

namespace Undercowl.Diagnosis.Tests;

/// <summary>Oracle: every possible world, one at a time (independent of the graph and of inference).</summary>
public sealed class BruteForceTests(ITestOutputHelper output)
{
    private static readonly string Hash = "sha256:" + new string('0', 64);

    private static readonly Workbench Small = new(SmallEngine.Knowledge, Hash);

    public static TheoryData<int> Seeds => [.. Enumerable.Range(1, 30)];

    /// <summary>Layouts of the repository, with how many jobs are made up for each.</summary>
    public static TheoryData<string, int> Layouts
    {
        get
        {
            var data = new TheoryData<string, int>();
            foreach (var (layout, jobs) in (ReadOnlySpan<(string, int)>)[
                ("cut-down-2-cdi", 40), ("cut-down-2-inductive", 50), ("two-stroke-3-cdi", 10), ("four-stroke-4-inductive", 10), ("rope-1-magneto", 10)])
            {
                for (var seed = 1; seed <= jobs; seed++)
                {
                    data.Add(layout, seed);
                }
            }

            return data;
        }
    }

    [Theory]
    [MemberData(nameof(Seeds))]
    public void Beliefs_of_the_invented_engine_equal_the_sum_over_all_worlds(int seed) =>
        output.WriteLine($"{TwinBelief.Compare(Small, SmallEngine.Knowledge, RandomJobs.Written(Small, RandomJobs.Mixed(seed), seed))} worlds");

    /// <summary>The knowledge of the repository. Conditions that the job does not need have no chance, so that the worlds can be gone through.</summary>
    [Theory]
    [MemberData(nameof(Layouts))]
    public void Beliefs_with_the_real_knowledge_equal_the_sum_over_all_worlds(string layout, int seed)
    {
        var (workbench, job) = MadeUp(layout, seed);
        output.WriteLine($"{TwinBelief.Compare(workbench, Shop.Knowledge, job)} worlds");
    }

    /// <summary>What the test above is about does occur in its jobs of the two cut-down layouts.</summary>
    [Fact]
    public void Jobs_made_up_for_the_cut_down_layouts_have_everything_that_a_belief_depends_on()
    {
        var seen = new Dictionary<string, int>();
        void Count(string what, bool there) => seen[what] = seen.GetValueOrDefault(what) + (there ? 1 : 0);
        foreach (var (layout, seed) in Layouts.Select(row => row.Data).Where(row => row.Item1.StartsWith("cut-down", StringComparison.Ordinal)))
        {
            var (workbench, job) = MadeUp(layout, seed);
            var bodies = job.Entries.Select(e => e.Body).ToArray();
            var findings = bodies.OfType<Finding>().ToArray();
            var deeds = bodies.OfType<Remedy>().Select(r => Shop.Knowledge.Remedies.First(k => k.Id == r.Action)).ToArray();
            var diagnosis = workbench.Open(job);
            Count("parts swapped", bodies.OfType<Swap>().Any(s => s.Part != "double-coil"));
            Count("outputs swapped", bodies.OfType<Swap>().Any(s => s.Part == "double-coil"));
            Count("part replaced", deeds.Any(r => r.Replaces));
            Count("part mended", deeds.Any(r => !r.Replaces));
            Count("new occasion", bodies.OfType<Occasion>().Any());
            Count("output mended", bodies.OfType<Remedy>().Any(r => r.Output is not null));
            Count("cured", bodies.OfType<Remedy>().Any(r => r.Result == RemedyResult.Cured));
            Count("better or as before", bodies.OfType<Remedy>().Any(r => r.Result is RemedyResult.InPart or RemedyResult.NoChange));
            Count("finding taken back", diagnosis.Projection.Withdrawn.Any(w => w.Entry.Body is Finding));
            Count("deed taken back", diagnosis.Projection.Withdrawn.Any(w => w.Entry.Body is Swap or Remedy or Occasion));
            Count("withdrawal taken back", diagnosis.Projection.Withdrawn.Any(w => w.Entry.Body is Withdrawn));
            Count("number", findings.Any(f => f.Value is NumberReading));
            Count("count", findings.Any(f => f.Value is CountReading));
            Count("over range", findings.Any(f => f.Value is OpenReading));
            Count("not done", findings.Any(f => f.Value is NotDoneReading));
            Count("hearsay", findings.Any(f => f.Hearsay));
            Count("hot", findings.Any(f => f.SetUp["heat"] == "hot"));
            Count("tester gap", findings.Any(f => f.SetUp.ContainsKey("gap")));
            Count("readings that err together", diagnosis.Network.Laid.GroupBy(l => l.Company).Any(g => g.Count() > 1));
            Count("readings that do not", diagnosis.Network.Laid
                .GroupBy(l => (l.Check.Id, l.Finding.Body.Place, l.Finding.Body.Hand)).Any(g => g.DistinctBy(l => l.Company).Count() > 1));
            Count("set-up reached", diagnosis.Network.Reached.Any(r => !r.Signal.IsConstant));
            Count("answer that tells something", diagnosis.Network.Answers.Count > 0);
            Count("fault that comes and goes", diagnosis.Network.Model.Aspects.Any(a => a.Conditions.Any(c => c.Prior > 0 && c.Shows is not null)));
        }

        Assert.All(seen, s => Assert.True(s.Value >= (s.Key == "over range" ? 3 : 8), $"{s.Key}: {s.Value} jobs"));
    }

    private static (Workbench Workbench, Job Job) MadeUp(string layout, int seed)
    {
        var jobs = new ShopJobs(Shop.Knowledge, layout);
        var random = new Random(seed);
        var bodies = jobs.Mixed(random);
        var workbench = new Workbench(jobs.Narrowed(bodies, random), Hash);
        return (workbench, jobs.Written(workbench, bodies, seed, random));
    }
}
