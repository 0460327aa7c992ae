using Undercowl.Diagnosis.Tests.Fixtures;
using Undercowl.Jobs;
using Xunit;

namespace Undercowl.Diagnosis.Tests;

/// <summary>
/// Derived: the engine does not know in which order its readings were written down, nor on which device. Readings between
/// two deeds may be told in any order and by several hands at once; merging the copies in any order is one job.
/// </summary>
public abstract class OrderAndMergeTests
{
    /// <summary>Sums in another order round otherwise; nothing else may differ.</summary>
    private const double Tolerance = 1e-10;

    private static readonly int[][] Orders = [[0, 1, 2], [0, 2, 1], [1, 0, 2], [1, 2, 0], [2, 0, 1], [2, 1, 0]];

    public static TheoryData<int> Seeds => [.. Enumerable.Range(1, 60)];

    protected abstract Workbench Workbench { get; }

    /// <summary>A swap, a remedy or a new occasion, which may change the heat.</summary>
    protected abstract EntryBody Deed(Random random, ref string heat);

    protected abstract Finding Found(Random random, string heat);

    protected abstract Job Written(IEnumerable<EntryBody> bodies, int seed);

    [Theory]
    [MemberData(nameof(Seeds))]
    public void Readings_of_one_state_of_the_engine_may_be_written_in_any_order(int seed)
    {
        var random = new Random(seed);
        var spells = Spells(random);
        var told = Believed(Written(Flat(spells), seed));
        for (var other = 0; other < 3; other++)
        {
            foreach (var (_, findings) in spells)
            {
                var shuffled = findings.ToArray();
                random.Shuffle(shuffled);
                findings.Clear();
                findings.AddRange(shuffled);
            }

            Same(told, Believed(Written(Flat(spells), seed)));
        }
    }

    /// <summary>Which reading a deed comes before does matter: otherwise the test above would hold of an engine that nothing changes.</summary>
    [Fact]
    public void A_reading_moved_across_a_deed_is_another_reading()
    {
        var differing = 0;
        for (var seed = 1; seed <= 60; seed++)
        {
            var random = new Random(seed);
            var spells = Spells(random);
            var told = Believed(Written(Flat(spells), seed));
            var moved = spells[0].Findings[^1];
            spells[0].Findings.RemoveAt(spells[0].Findings.Count - 1);
            spells[^1].Findings.Add(moved);
            var after = Believed(Written(Flat(spells), seed));
            differing += told.Zip(after).Any(p => Math.Abs(p.First - p.Second) > 1e-6) ? 1 : 0;
        }

        Assert.True(differing > 30, $"{differing} of 60 differ");
    }

    [Theory]
    [MemberData(nameof(Seeds))]
    public void Copies_written_at_once_and_merged_in_any_order_are_one_job_and_one_belief(int seed)
    {
        var random = new Random(seed);
        var spells = Spells(random);
        var common = Written(Flat(spells), seed);
        var heat = Heat(spells);
        var added = new List<EntryBody>();
        var copies = new Job[3];
        for (var c = 0; c < copies.Length; c++)
        {
            var writer = Story.Writer($"device {c}", 100 * seed + c);
            copies[c] = common;
            for (var i = 1 + random.Next(2); i > 0; i--)
            {
                added.Add(Found(random, heat));
                copies[c] = copies[c].With(writer.Next(copies[c], added[^1]));
            }
        }

        var merged = copies[0].Merge(copies[1]).Merge(copies[2]);
        var believed = Believed(merged);
        foreach (var order in Orders)
        {
            var (a, b, c) = (copies[order[0]], copies[order[1]], copies[order[2]]);
            Assert.Equal(a.Merge(b).ToBytes(), b.Merge(a).ToBytes());
            Same(Believed(a.Merge(b)), Believed(b.Merge(a)));
            foreach (var other in (Job[])[a.Merge(b).Merge(c), a.Merge(b.Merge(c))])
            {
                Assert.Equal(merged.ToBytes(), other.ToBytes());
                Same(believed, Believed(other));
            }
        }

        // One person with one device, who wrote it all down, believes the same.
        Same(believed, Believed(Written([.. Flat(spells), .. added], seed)));
    }

    /// <summary>Two swaps that know nothing of each other are told in the order of the log, whichever copy is merged into which.</summary>
    [Theory]
    [MemberData(nameof(Seeds))]
    public void Deeds_done_at_once_give_one_belief_in_any_order_of_merging(int seed)
    {
        var random = new Random(seed);
        var common = Written(Flat(Spells(random)), seed);
        var copies = new Job[3];
        for (var c = 0; c < copies.Length; c++)
        {
            var writer = Story.Writer($"device {c}", 100 * seed + c);
            var heat = "cold";
            copies[c] = common.With(writer.Next(common, Deed(random, ref heat)));
            copies[c] = copies[c].With(writer.Next(copies[c], Found(random, heat)));
        }

        var merged = copies[0].Merge(copies[1]).Merge(copies[2]);
        var believed = Believed(merged);
        foreach (var order in Orders)
        {
            var other = copies[order[0]].Merge(copies[order[1]].Merge(copies[order[2]]));
            Assert.Equal(merged.ToBytes(), other.ToBytes());
            Assert.Equal(believed, Believed(other));
        }
    }

    /// <summary>Two to three spells: a deed (none before the first), then the readings until the next one.</summary>
    private List<(EntryBody? Deed, List<Finding> Findings)> Spells(Random random)
    {
        var spells = new List<(EntryBody?, List<Finding>)>();
        var heat = "cold";
        for (var s = 2 + random.Next(2); s > 0; s--)
        {
            var deed = spells.Count == 0 ? null : Deed(random, ref heat);
            var now = heat;
            spells.Add((deed, [.. Enumerable.Range(0, 2 + random.Next(2)).Select(_ => Found(random, now))]));
        }

        return spells;
    }

    private static IEnumerable<EntryBody> Flat(IEnumerable<(EntryBody? Deed, List<Finding> Findings)> spells) =>
        spells.SelectMany(s => s.Deed is null ? [.. s.Findings] : (EntryBody[])[s.Deed, .. s.Findings]);

    private static string Heat(IEnumerable<(EntryBody? Deed, List<Finding> Findings)> spells) => spells.Last().Findings[0].SetUp["heat"];

    /// <summary>ln P(evidence), then every condition of every aspect as found and now.</summary>
    private double[] Believed(Job job)
    {
        var diagnosis = Workbench.Open(job);
        var belief = diagnosis.Belief;
        return [belief.Posterior.LogEvidence, .. diagnosis.Network.Model.Aspects.SelectMany(a =>
            Enumerable.Range(0, a.StateNames.Length).SelectMany(s => (double[])[belief.AsFound(a, s), belief.Now(a, s)]))];
    }

    private static void Same(double[] expected, double[] actual)
    {
        Assert.Equal(expected.Length, actual.Length);
        for (var i = 0; i < expected.Length; i++)
        {
            Assert.Equal(expected[i], actual[i], Tolerance);
        }
    }
}

/// <summary>The invented engine, which has all ways of combining, of setting up and of mending.</summary>
public sealed class OrderAndMergeOfTheInventedEngineTests : OrderAndMergeTests
{
    protected override Workbench Workbench { get; } = new(SmallEngine.Knowledge, "sha256:" + new string('0', 64));

    protected override EntryBody Deed(Random random, ref string heat) => RandomJobs.Deed(random, ref heat);

    protected override Finding Found(Random random, string heat) => RandomJobs.Found(random, heat);

    protected override Job Written(IEnumerable<EntryBody> bodies, int seed) => RandomJobs.Written(Workbench, bodies, seed);
}

/// <summary>The knowledge of the repository over a layout, all of it. Most of the deeds and findings are about one part.</summary>
public abstract class OrderAndMergeOfALayoutTests(string layout, string part) : OrderAndMergeTests
{
    private readonly ShopJobs _jobs = new(Shop.Knowledge, layout);

    protected override Workbench Workbench => Shop.Workbench;

    protected override EntryBody Deed(Random random, ref string heat) => _jobs.Deed(random, ref heat, random.Next(3) > 0 ? part : null);

    protected override Finding Found(Random random, string heat) => _jobs.Found(random, heat, random.Next(3) > 0 ? part : null);

    protected override Job Written(IEnumerable<EntryBody> bodies, int seed) => _jobs.Written(Workbench, bodies, seed);
}

public sealed class OrderAndMergeOfCapacitorDischargeTests() : OrderAndMergeOfALayoutTests("cut-down-2-cdi", "ignition-coil");

public sealed class OrderAndMergeOfInductiveTests() : OrderAndMergeOfALayoutTests("cut-down-2-inductive", "double-coil");
