namespace Undercowl.Jobs.Tests.Bodies;

public sealed class UnknownTests
{
    [Fact]
    public void A_kind_of_a_later_version_is_kept_byte_for_byte_and_shown()
    {
        var line = Samples.Line("trace", """{"samples":4096,"channels":["primary","ä"],"x":{"y":null,"z":[true]}}""");
        var reading = Job.Parse(System.Text.Encoding.UTF8.GetBytes(line + "\n"));
        Assert.Empty(reading.Problems);
        Assert.Equal(line + "\n", System.Text.Encoding.UTF8.GetString(reading.Job.ToBytes()));
        var body = Assert.IsType<UnknownBody>(reading.Job.Entries[0].Body);
        Assert.Equal("trace", body.Kind);
        Assert.Equal("""{"channels":["primary","ä"],"samples":4096,"x":{"y":null,"z":[true]}}""", body.Json);
        Assert.Single(Projection.Of(reading.Job).Live);
    }

    [Fact]
    public void Members_of_a_later_version_are_kept_and_listed_with_their_place()
    {
        var line = Samples.Line("remedy", """
            {"action":"replace-plug","revision":1,"place":"cyl:2","colour":"red","figures":{"gap":{"unit":"mm","value":"0.9","by":"wire"}},
            "parts":[{"part":"plug"},{"part":"plug","batch":{"n":7}}]}
            """).Replace(""","seq":9}""", ""","seq":9,"signature":"abc"}""", StringComparison.Ordinal);
        var entry = Entry.Parse(line);
        Assert.Equal(line, entry.Text);
        Assert.Equal(
            ["body.colour=\"red\"", "body.figures.gap.by=\"wire\"", "body.parts[1].batch={\"n\":7}", "signature=\"abc\""],
            entry.Unknown.Select(member => $"{member.Path}={member.Json}").Order(StringComparer.Ordinal));
    }

    [Fact]
    public void A_reading_of_a_later_version_is_kept_and_one_beside_a_known_reading_is_listed()
    {
        var alone = Entry.Parse(Finding("""{"trace":"sha256:00"}"""));
        Assert.Equal("""{"trace":"sha256:00"}""", Assert.IsType<UnknownReading>(((Finding)alone.Body).Value).Json);
        var beside = Entry.Parse(Finding("""{"choice":"jumped","bound":"at-least"}"""));
        Assert.IsType<ChoiceReading>(((Finding)beside.Body).Value);
        Assert.Equal("body.reading.bound", Assert.Single(beside.Unknown).Path);
    }

    private static string Finding(string reading) => Samples.Line(
        "finding", $$"""{"check":"spark","hand":"technician","occasion":"o","place":"engine","revision":1,"setUp":{},"reading":{{reading}}}""");
}
