namespace Undercowl.Jobs.Tests.Log;

public sealed class EntryWriterTests
{
    private readonly SetClock clock = new();

    [Fact]
    public void The_next_entry_follows_all_heads_and_counts_on()
    {
        var (here, there) = (new EntryWriter("here", clock, Seeded.Random(1)), new EntryWriter("there", clock, Seeded.Random(2)));
        var first = here.Next(Job.Empty, new Note("first"));
        var start = Job.Empty.With(first);
        var mine = here.Next(start, new Note("mine"));
        var other = there.Next(start, new Note("other"));
        var both = start.With(mine).With(other);
        var next = here.Next(both, new Note("next"));
        Assert.Equal(new[] { mine.Id, other.Id }.Order(), next.Parents);
        Assert.Equal((1, 2, 1, 3), (first.Sequence, mine.Sequence, other.Sequence, next.Sequence));
        Assert.Equal(clock.Now, next.At);
        Assert.Equal([next.Id], both.With(next).Heads);
    }

    [Fact]
    public void A_new_writer_goes_on_where_the_device_left_off_even_with_the_clock_set_back()
    {
        var job = Job.Empty.With(new EntryWriter("here", clock, Seeded.Random(1)).Next(Job.Empty, new Note("before")));
        clock.Now -= TimeSpan.FromDays(400);
        var next = new EntryWriter("here", clock, Seeded.Random(9)).Next(job, new Note("after"));
        Assert.True(next.Id > job.Entries[0].Id);
        Assert.Equal(2, next.Sequence);
        Assert.Equal(clock.Now, next.At);
    }

    public static TheoryData<EntryBody> NamingNothing =>
    [
        new Withdrawn(Samples.Id(7), "gone"), new Result(Samples.Id(7), RemedyResult.Cured), new Proof([Samples.Id(7)], "ran"),
        new Note("about", [Samples.Id(7)]), new Photo(Sha256Text.Of(""u8), "image/png", 1, [Samples.Id(7)]),
    ];

    [Theory]
    [MemberData(nameof(NamingNothing))]
    public void An_entry_about_one_that_is_not_there_is_not_made(EntryBody body)
    {
        var writer = new EntryWriter("here", clock, Seeded.Random(1));
        Assert.Contains(Samples.Id(7).ToString(), Assert.Throws<JobException>(() => writer.Next(Job.Empty, body)).Message, StringComparison.Ordinal);
        Assert.NotNull(writer.Next(Job.Of([Samples.Entry(new Note("there"), 7)]), body));
    }

    public static TheoryData<EntryBody> Malformed =>
    [
        new Note(""), new Cranked(0), new Intake("Last done", "x"), new Rate(new Money(default, "EUR")),
        Samples.Spark() with { SetUp = Samples.SetUp(("Stop wire", "off")) }, Samples.Spark() with { Value = new CountReading(3, 2) },
        Samples.Opened() with { Knowledge = "today's" }, new Swap("coil", Place.Engine, Place.Engine), new UnknownBody("Trace", "{}"),
        new UnknownBody("trace", """{"x":0.5}"""), new Note(new string('x', Entry.MaxBytes)),
    ];

    [Theory]
    [MemberData(nameof(Malformed))]
    public void What_could_not_be_read_back_is_not_made(EntryBody body)
    {
        var error = Assert.Throws<JobException>(() => new EntryWriter("here", clock, Seeded.Random(1)).Next(Job.Empty, body));
        Assert.NotEmpty(error.Problem.Mend);
    }

    /// <summary>A test of its own: as a row's name, half a surrogate pair cannot be written into a test report.</summary>
    [Fact]
    public void Half_a_surrogate_pair_is_not_made() => What_could_not_be_read_back_is_not_made(new Note("half a pair \ud800"));

    [Theory]
    [InlineData("")]
    [InlineData("tab\tlet")]
    public void A_device_needs_a_name(string device) =>
        Assert.Throws<JobException>(() => new EntryWriter(device, clock, Seeded.Random(1)).Next(Job.Empty, new Note("x")));
}
