namespace Undercowl.Jobs.Tests.Projecting;

public sealed class ProjectionTests
{
    private readonly EntryWriter writer = new("here", new SetClock(), Seeded.Random(1));
    private Job job = Job.Empty;

    [Fact]
    public void A_finding_sees_the_swap_before_it_and_not_the_one_after_or_beside_it()
    {
        Say(Samples.Opened());
        var start = job;
        var before = Say(Swap(1, 2));
        var finding = Say(Samples.Spark());
        Say(Swap(2, 3));
        var beside = new EntryWriter("there", new SetClock(), Seeded.Random(2)).Next(start, Swap(1, 3));
        var projection = Projection.Of(job.With(beside));
        Assert.Equal([before.Id], Assert.Single(projection.Findings).Swaps.Select(said => said.Id));
        Assert.True(projection.Independent(beside.Id, finding.Id));
        Assert.False(projection.Independent(before.Id, finding.Id));
        Assert.False(projection.Independent(finding.Id, finding.Id));
        Assert.Equal(2, projection.Heads.Count);
    }

    [Fact]
    public void Withdrawing_a_swap_reinterprets_the_findings_after_it_and_withdrawing_the_withdrawal_brings_it_back()
    {
        Say(Samples.Opened());
        var early = Say(Samples.Spark());
        var swap = Say(Swap(1, 2));
        var late = Say(Samples.Spark());
        Assert.Equal([late.Id], Projection.Of(job).Reinterpreted(swap.Id).Select(finding => finding.Id));
        Assert.Empty(Projection.Of(job).Reinterpreted(early.Id));

        var withdrawal = Say(new Withdrawn(swap.Id, "put back at once"));
        Assert.False(Projection.Of(job).Holds(swap.Id));
        Assert.Empty(Projection.Of(job).Findings[1].Swaps);
        Assert.Equal((swap, withdrawal), Assert.Single(Projection.Of(job).Withdrawn));
        Assert.Equal([late.Id], Projection.Of(job).Reinterpreted(withdrawal.Id).Select(finding => finding.Id));

        Say(new Withdrawn(withdrawal.Id, "it was not"));
        Assert.True(Projection.Of(job).Holds(swap.Id));
        Assert.Equal([swap.Id], Projection.Of(job).Findings[1].Swaps.Select(said => said.Id));
    }

    [Fact]
    public void A_withdrawn_finding_is_no_longer_among_the_findings_but_stays_in_the_job()
    {
        var finding = Say(Samples.Spark());
        Say(new Withdrawn(finding.Id, "lead was on the wrong plug"));
        Assert.Empty(Projection.Of(job).Findings);
        Assert.Equal(2, job.Count);
    }

    [Fact]
    public void A_withdrawal_of_what_it_could_not_know_has_no_effect_and_is_listed()
    {
        var finding = Samples.Entry(Samples.Spark(), 5);
        var blind = Samples.Entry(new Withdrawn(finding.Id, "guessed"), 6);
        var projection = Projection.Of(Job.Of([finding, blind]));
        Assert.True(projection.Holds(finding.Id));
        Assert.Equal([blind], projection.WithoutEffect);
    }

    [Fact]
    public void The_latest_word_on_each_subject_holds()
    {
        Say(Samples.Opened());
        Say(new Ambient(Temperature: Measured.Of("10", "°C"), Altitude: Measured.Of("400", "m")));
        var wrong = Say(new Ambient(Temperature: Measured.Of("100", "°C")));
        Say(new Ambient(Humidity: Measured.Of("80", "%")));
        Say(new Withdrawn(wrong.Id, "one nought too many"));
        Say(new Tools(["meter", "spark-tester"], ["peak-adaptor"]));
        Say(new Tools(["peak-adaptor"], ["meter"]));
        Say(new Specs(PartId.Parse("plug"), "gap", "generic", Nominal: Measured.Of("1.0", "mm")));
        Say(new Specs(PartId.Parse("plug"), "gap", "manual", Nominal: Measured.Of("0.9", "mm")));
        Say(new Specs(PartId.Parse("plug@cyl:1"), "gap", "manual", Nominal: Measured.Of("0.8", "mm")));
        Say(new Rate(Money.Of("60", "EUR")));
        Say(new Rate(Money.Of("72.50", "EUR")));
        Say(new Plate(Samples.SetUp(("serial", "0123"), ("hours", "411"))));
        Say(new Plate(Samples.SetUp(("hours", "412"))));
        Say(new Interlock("air", "smell"));
        Say(new Interlock("air", "clear"));
        Say(new Interlock("holes", "open", Place.Parse("cyl:1")));
        Say(new Complaint("misses", Samples.NoSetUp));
        Say(new Layout(EmbeddedJson.Of("""{"cylinders":2}"""), "two leads"));

        var now = Projection.Of(job);
        Assert.Equal("altitude 400 m, humidity 80 %, temperature 10 °C", string.Join(", ", now.Ambient.OrderBy(pair => pair.Key).Select(pair => $"{pair.Key} {pair.Value}")));
        Assert.Equal("meter False, peak-adaptor True, spark-tester True", string.Join(", ", now.Tools.OrderBy(pair => pair.Key).Select(pair => $"{pair.Key} {pair.Value}")));
        Assert.Equal("0.9 mm", now.Specs[(PartId.Parse("plug"), "gap")].Body.Nominal!.ToString());
        Assert.Equal("0.8 mm", now.Specs[(PartId.Parse("plug@cyl:1"), "gap")].Body.Nominal!.ToString());
        Assert.Equal("72.50 EUR", now.PerHour!.ToString());
        Assert.Equal(("0123", "412"), (now.Plate["serial"], now.Plate["hours"]));
        Assert.Equal("clear", now.Interlocks[("air", Place.Engine)].Body.State);
        Assert.Equal("open", now.Interlocks[("holes", Place.Parse("cyl:1"))].Body.State);
        Assert.Equal(["dies-hot", "misses"], now.Complaints.Select(complaint => complaint.Id));
        Assert.Equal("""{"cylinders":2}""", now.Layout!.Text);
    }

    [Fact]
    public void A_remedys_result_is_the_last_one_said()
    {
        var known = Say(new Remedy("clean-plug", 1, Place.Parse("cyl:1")) { Result = RemedyResult.Cured });
        var open = Say(new Remedy("replace-coil", 1, Place.Parse("cyl:1")));
        Assert.Equal((RemedyResult.Cured, null), (Projection.Of(job).ResultOf(known.Id), Projection.Of(job).ResultOf(open.Id)));
        Say(new Result(known.Id, RemedyResult.ForATime));
        var wrong = Say(new Result(open.Id, RemedyResult.NewFault));
        Say(new Withdrawn(wrong.Id, "another boat"));
        Assert.Equal((RemedyResult.ForATime, null), (Projection.Of(job).ResultOf(known.Id), Projection.Of(job).ResultOf(open.Id)));
    }

    [Fact]
    public void A_job_is_signed_off_until_something_is_found_or_done_again()
    {
        Say(Samples.Opened());
        Assert.Null(Projection.Of(job).Ending);
        Say(new SignOff(JobOutcome.Unproven, "technician", []));
        Say(new Note("fetched"));
        Assert.Equal(JobOutcome.Unproven, Projection.Of(job).Ending!.Body.Outcome);
        Say(Samples.Spark());
        Assert.Null(Projection.Of(job).Ending);
    }

    [Fact]
    public void An_entry_that_is_not_there_is_named_in_the_error() =>
        Assert.Contains(Samples.Id(7).ToString(), Assert.Throws<JobException>(() => Projection.Of(job).Reinterpreted(Samples.Id(7))).Message, StringComparison.Ordinal);

    [Fact]
    public void The_empty_job_projects_to_nothing()
    {
        var projection = Projection.Of(Job.Empty);
        Assert.Empty(projection.Live);
        Assert.Null(projection.Layout);
        Assert.Empty(projection.Complaints);
    }

    private static Swap Swap(int a, int b) => new("ignition-coil", Place.Parse($"cyl:{a}"), Place.Parse($"cyl:{b}"));

    private Entry Say(EntryBody body)
    {
        var entry = writer.Next(job, body);
        job = job.With(entry);
        return entry;
    }
}
