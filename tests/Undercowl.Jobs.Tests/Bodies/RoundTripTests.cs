using System.Text.Json;

namespace Undercowl.Jobs.Tests.Bodies;

public sealed class RoundTripTests
{
    public static TheoryData<int> All => [.. Enumerable.Range(0, Samples.Bodies.Count)];

    [Theory]
    [MemberData(nameof(All))]
    public void Every_kind_is_read_back_and_written_again_byte_for_byte(int sample)
    {
        var entry = Samples.Entry(Samples.Bodies[sample], 9, 1, 2);
        var read = Entry.Parse(entry.Line);
        Assert.Equal(Samples.Bodies[sample].GetType(), read.Body.GetType());
        var again = Entry.Of(read.Id, read.At, read.Device, read.Sequence, read.Parents, read.Body);
        Assert.Equal(entry.Text, again.Text);
    }

    [Theory]
    [MemberData(nameof(All))]
    public void Every_value_of_a_body_is_in_the_bytes_as_often_as_in_the_record_and_no_other(int sample)
    {
        using var line = JsonDocument.Parse(Samples.Entry(Samples.Bodies[sample]).Line);
        Assert.Equal(
            Flat.ValuesOf(Samples.Bodies[sample]).Order(StringComparer.Ordinal),
            Flat.LeavesOf(line.RootElement.GetProperty("body")).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Every_kind_there_is_has_a_sample()
    {
        var sampled = Samples.Bodies.Select(body => body.Kind).Distinct().Order(StringComparer.Ordinal);
        Assert.Equal(BodyKinds.Known.Append("trace").Order(StringComparer.Ordinal), sampled);
    }

    [Fact]
    public void The_line_has_the_shape_that_the_format_fixes()
    {
        // derived: by hand from docs/job-format.md; logs written today must read the same for ever.
        var entry = Samples.Entry(Samples.Spark() with { Value = new NumberReading(Measured.Of("0.9", "mm")) }, 3, 2, 1);
        Assert.Equal(
            """
            {"at":"2026-11-25T10:15:30.126Z",
            "body":{"check":"spark-at-tester","hand":"technician","occasion":"opening","place":"cyl:2",
            "reading":{"number":{"unit":"mm","value":"0.9"}},"revision":1,"setUp":{}},
            "device":"tablet-3","id":"IDID0003","kind":"finding","parents":["IDID0001","IDID0002"],"seq":3}
            """.Replace("\n", "", StringComparison.Ordinal).Replace("IDID0001", Samples.Id(1).ToString(), StringComparison.Ordinal)
                .Replace("IDID0002", Samples.Id(2).ToString(), StringComparison.Ordinal).Replace("IDID0003", Samples.Id(3).ToString(), StringComparison.Ordinal),
            entry.Text);
    }
}
