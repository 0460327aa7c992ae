using CsCheck;

namespace Undercowl.Jobs.Tests.Ids;

public sealed class EntryIdsTests
{
    [Fact]
    public void Ids_of_a_device_grow_whatever_its_clock_does() => Gen.Int[-5000, 5000].Array[1, 50].Sample(steps =>
    {
        var clock = new SetClock();
        var ids = new EntryIds(clock, Seeded.Random(steps.Length));
        var last = default(EntryId);
        foreach (var step in steps)
        {
            clock.Now += TimeSpan.FromMilliseconds(step);
            var next = ids.Next();
            Assert.True(next > last);
            Assert.True(EntryId.TryParse(next.ToString(), out _));
            last = next;
        }
    });

    [Fact]
    public void An_id_tells_the_millisecond_it_was_made_in()
    {
        var clock = new SetClock();
        Assert.Equal(clock.Now.ToUnixTimeMilliseconds(), new EntryIds(clock, Seeded.Random(1)).Next().Milliseconds);
    }

    [Fact]
    public void An_id_exceeds_the_last_one_in_the_job_even_when_that_one_is_from_the_future()
    {
        var clock = new SetClock();
        var future = EntryId.Of(clock.Now.ToUnixTimeMilliseconds() + 1_000_000, EntryId.TailLimit - 1);
        var next = new EntryIds(clock, Seeded.Random(1)).Next(future);
        Assert.True(next > future);
        // derived: the 74 bits are used up, so the time is raised by one millisecond.
        Assert.Equal(future.Milliseconds + 1, next.Milliseconds);
    }

    [Fact]
    public void A_random_source_that_always_gives_the_same_still_gives_different_ids()
    {
        var ids = new EntryIds(new SetClock(), buffer => buffer.Clear());
        Assert.Equal(1000, Enumerable.Range(0, 1000).Select(_ => ids.Next()).Distinct().Count());
    }

    [Theory]
    [InlineData(1969)]
    [InlineData(-1)]
    public void A_clock_out_of_range_is_refused(int year)
    {
        var clock = new SetClock { Now = year < 0 ? DateTimeOffset.UnixEpoch.AddMilliseconds(-1) : new DateTimeOffset(year, 1, 1, 0, 0, 0, TimeSpan.Zero) };
        Assert.Contains("clock", Assert.Throws<JobException>(() => new EntryIds(clock, Seeded.Random(1)).Next()).Message, StringComparison.Ordinal);
    }
}
