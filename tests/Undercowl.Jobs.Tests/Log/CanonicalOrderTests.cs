using CsCheck;

namespace Undercowl.Jobs.Tests.Log;

public sealed class CanonicalOrderTests
{
    [Fact]
    public void Parents_come_first_and_of_the_free_ones_the_smallest_id()
    {
        // derived: 5 is free first although its id is the greatest of the roots' children; 2 waits for 9.
        var job = Job.Of(
        [
            Samples.Entry(new Note("2 after 9"), 2, 9), Samples.Entry(new Note("9"), 9), Samples.Entry(new Note("5 after 3"), 5, 3), Samples.Entry(new Note("3"), 3),
        ]);
        Assert.Equal("3 5 9 2", string.Join(" ", job.Entries.Select(entry => entry.Sequence)));
    }

    [Fact]
    public void The_order_is_that_of_the_slow_way() => Simulation.Steps(40).Sample(steps =>
    {
        var job = Simulation.Run(steps).Aggregate((a, b) => a.Merge(b));
        // The slow twin: look through all that is left for the smallest id whose present parents are all out.
        var left = job.Entries.ToDictionary(entry => entry.Id);
        var slow = new List<EntryId>();
        while (left.Count > 0)
        {
            var next = left.Values.Where(entry => !entry.Parents.Any(left.ContainsKey)).Min(entry => entry.Id);
            left.Remove(next);
            slow.Add(next);
        }

        Assert.Equal(slow, job.Entries.Select(entry => entry.Id));
    });

    [Fact]
    public void Heads_are_the_entries_that_nothing_follows() => Simulation.Steps(40).Sample(steps =>
    {
        foreach (var job in Simulation.Run(steps))
        {
            var followed = job.Entries.SelectMany(entry => entry.Parents).ToHashSet();
            Assert.Equal(job.Entries.Select(entry => entry.Id).Where(id => !followed.Contains(id)).Order(), job.Heads);
        }
    });

    [Fact]
    public void A_missing_parent_is_reported_and_its_child_counts_as_a_first_entry()
    {
        var reading = Job.Parse(Job.Of([Samples.Entry(new Note("b"), 2, 1), Samples.Entry(new Note("a"), 3)]).ToBytes(), "bow.jsonl");
        Assert.Empty(reading.Problems);
        Assert.Equal((Samples.Id(1), Samples.Id(2)), Assert.Single(reading.Job.MissingParents));
        var notice = Assert.Single(reading.Notices);
        Assert.Contains(Samples.Id(1).ToString(), notice.What, StringComparison.Ordinal);
        Assert.Contains("Merge with the copy", notice.Mend, StringComparison.Ordinal);
        Assert.Equal(Samples.Id(2), reading.Job.Entries[0].Id);
    }

    [Fact]
    public void A_missing_parent_that_arrives_takes_its_place()
    {
        var job = Job.Of([Samples.Entry(new Note("b"), 2, 1)]).With(Samples.Entry(new Note("a"), 1));
        Assert.Empty(job.MissingParents);
        Assert.Equal([Samples.Id(2)], job.Heads);
        Assert.Equal([Samples.Id(1), Samples.Id(2)], job.Entries.Select(entry => entry.Id));
    }

    [Fact]
    public void One_device_name_on_two_copies_is_reported_and_does_no_harm()
    {
        var job = Job.Of([Samples.Entry(new Note("a"), 1)]);
        var twin = Entry.Of(Samples.Id(7), DateTimeOffset.UnixEpoch, Samples.Device, 1, [], new Note("b"));
        var reading = Job.Parse(job.With(twin).ToBytes());
        Assert.Equal(2, reading.Job.Count);
        Assert.Contains("more than once", Assert.Single(reading.Notices).What, StringComparison.Ordinal);
    }
}
