using CsCheck;

namespace Undercowl.Jobs.Tests.Log;

public sealed class MergeTests
{
    private static readonly int[][] Orders = [[0, 1, 2], [0, 2, 1], [1, 0, 2], [1, 2, 0], [2, 0, 1], [2, 1, 0]];

    [Fact]
    public void Any_three_copies_merged_in_any_order_and_grouping_give_the_same_bytes() => Simulation.Steps(40).Sample(steps =>
    {
        var copies = Simulation.Run(steps);
        var expected = copies[0].Merge(copies[1]).Merge(copies[2]).ToBytes();
        foreach (var order in Orders)
        {
            var (a, b, c) = (copies[order[0]], copies[order[1]], copies[order[2]]);
            Assert.Equal(expected, a.Merge(b).Merge(c).ToBytes());
            Assert.Equal(expected, a.Merge(b.Merge(c)).ToBytes());
        }
    });

    [Fact]
    public void Merging_commutes_and_repeats_without_effect() => Simulation.Steps(40).Sample(steps =>
    {
        var copies = Simulation.Run(steps);
        var both = copies[0].Merge(copies[1]);
        Assert.Equal(both.ToBytes(), copies[1].Merge(copies[0]).ToBytes());
        Assert.Equal(both.ToBytes(), both.Merge(copies[0]).ToBytes());
        Assert.Same(both, both.Merge(copies[1]));
        Assert.Equal(copies[0].ToBytes(), copies[0].Merge(copies[0]).ToBytes());
        Assert.Equal(copies[0].ToBytes(), Job.Empty.Merge(copies[0]).ToBytes());
    });

    [Fact]
    public void A_merged_job_reads_back_as_itself_whatever_the_order_of_its_lines() => Gen.Select(Simulation.Steps(40), Gen.Int).Sample((steps, seed) =>
    {
        var job = Simulation.Run(steps).Aggregate((a, b) => a.Merge(b));
        var lines = job.Entries.ToArray();
        new Random(seed).Shuffle(lines);
        var reading = Job.Parse(lines.SelectMany(line => line.Line.ToArray().Append((byte)'\n')).ToArray());
        Assert.Empty(reading.Problems);
        Assert.Equal(job.ToBytes(), reading.Job.ToBytes());
        Assert.Equal(job.Heads, reading.Job.Heads);
    });

    [Fact]
    public void Parts_of_a_job_with_parents_missing_merge_to_the_same_bytes() => Gen.Select(Simulation.Steps(40), Gen.Int).Sample((steps, seed) =>
    {
        var job = Simulation.Run(steps).Aggregate((a, b) => a.Merge(b));
        var random = new Random(seed);
        var parts = new List<Entry>[] { [], [], [] };
        foreach (var entry in job.Entries)
            parts[random.Next(3)].Add(entry);
        foreach (var order in Orders)
        {
            var merged = order.Select(i => Job.Of(parts[i])).Aggregate((a, b) => a.Merge(b));
            Assert.Equal(job.ToBytes(), merged.ToBytes());
            Assert.Equal(job.Heads, merged.Heads);
            Assert.Empty(merged.MissingParents);
        }
    });

    [Fact]
    public void The_same_id_with_other_bytes_is_refused_by_name_and_nothing_is_merged()
    {
        var ours = Job.Of([Samples.Entry(new Note("blue"), 1)]);
        var theirs = Job.Of([Samples.Entry(new Note("orange"), 1), Samples.Entry(new Note("more"), 2)]);
        var error = Assert.Throws<JobConflictException>(() => ours.Merge(theirs));
        Assert.Equal(Samples.Id(1), error.Id);
        Assert.Contains(Samples.Id(1).ToString(), error.Message, StringComparison.Ordinal);
        Assert.Contains("edited by hand", error.Problem.Mend, StringComparison.Ordinal);
        Assert.Equal(1, ours.Count);
    }

    [Fact]
    public void Copies_that_are_circular_only_together_are_refused()
    {
        var one = Job.Of([Samples.Entry(new Note("a"), 1, 2)]);
        var other = Job.Of([Samples.Entry(new Note("b"), 2, 1)]);
        Assert.Contains("follows itself", Assert.Throws<JobException>(() => one.Merge(other)).Message, StringComparison.Ordinal);
        Assert.Contains("follows itself", Assert.Throws<JobException>(() => one.With(other.Entries[0])).Message, StringComparison.Ordinal);
    }
}
