using System.Text.Json;
using Json.Schema;

namespace Undercowl.Jobs.Tests.Bodies;

public sealed class SchemaTests
{
    private static readonly Lazy<JsonSchema> Schema = new(() => JsonSchema.FromText(Resource.Text("job.schema.json")));

    public static TheoryData<int> Good => [.. Enumerable.Range(0, Samples.Bodies.Count)];

    public static TheoryData<int> Bad => [.. Enumerable.Range(0, BadBodies.All.Length)];

    [Theory]
    [MemberData(nameof(Good))]
    public void Every_sample_entry_is_valid(int sample) => Assert.True(IsValid(Samples.Entry(Samples.Bodies[sample], 9, 1, 2).Text));

    [Theory]
    [MemberData(nameof(Bad))]
    public void A_bad_body_is_refused_by_the_reader_naming_what_is_wrong_and_by_the_schema(int bad)
    {
        var (kind, body, named, schemaTells) = BadBodies.All[bad];
        var line = Samples.Line(kind, body);
        var problem = Assert.Throws<JobException>(() => Entry.Parse(line)).Problem;
        Assert.Contains(named, problem.What, StringComparison.Ordinal);
        Assert.NotEmpty(problem.Mend);
        Assert.Equal(!schemaTells, IsValid(line));
    }

    [Fact]
    public void Every_kind_with_members_it_must_have_is_among_the_bad_bodies() =>
        Assert.Equal(BodyKinds.Known, BadBodies.All.Select(bad => bad.Kind).Distinct().Order(StringComparer.Ordinal));

    [Fact]
    public void The_schema_and_the_format_page_know_the_same_kinds_as_the_reader()
    {
        using var schema = JsonDocument.Parse(Resource.Text("job.schema.json"));
        var inSchema = schema.RootElement.GetProperty("allOf").EnumerateArray()
            .Select(rule => rule.GetProperty("if").GetProperty("properties").GetProperty("kind").GetProperty("const").GetString()!);
        Assert.Equal(BodyKinds.Known, inSchema.Order(StringComparer.Ordinal));
        var onPage = Resource.Lines("job-format.md").SkipWhile(line => line != "## Kinds").TakeWhile(line => line != "## Reading, merging, withdrawing")
            .Where(line => line.StartsWith("| `", StringComparison.Ordinal)).Select(line => line.Split('`')[1]);
        Assert.Equal(BodyKinds.Known, onPage);
    }

    [Fact]
    public void The_example_on_the_format_page_is_an_entry()
    {
        var line = Assert.Single(Resource.Lines("job-format.md"), line => line.StartsWith("{\"at\"", StringComparison.Ordinal));
        Assert.IsType<Finding>(Entry.Parse(line).Body);
        Assert.True(IsValid(line));
    }

    [Theory]
    [InlineData("\"seq\":9", "\"seq\":0")]
    [InlineData("\"seq\":9", "\"seq\":\"9\"")]
    [InlineData("30.123Z", "30Z")]
    [InlineData("2026-11-25", "2026-13-25")]
    [InlineData("\"tablet-3\"", "\"\"")]
    [InlineData("\"kind\":\"note\"", "\"kind\":\"Note\"")]
    [InlineData("\"parents\":[]", "\"parents\":[\"x\"]")]
    [InlineData("\"text\":\"a\"", "\"text\":\"a\",\"x\":0.5")]
    [InlineData("\"text\":\"a\"", "\"text\":\"a\",\"x\":{\"y\":[9007199254740992]}")]
    [InlineData("\"body\":{\"text\":\"a\"},", "")]
    public void A_bad_envelope_is_refused_by_the_reader_and_by_the_schema(string good, string bad)
    {
        var line = Samples.Line("note", """{"text":"a"}""");
        Assert.True(IsValid(line));
        Assert.NotNull(Entry.Parse(line));
        var broken = line.Replace(good, bad, StringComparison.Ordinal);
        Assert.NotEqual(line, broken);
        Assert.Throws<JobException>(() => Entry.Parse(broken));
        Assert.False(IsValid(broken));
    }

    private static bool IsValid(string line)
    {
        using var document = JsonDocument.Parse(line);
        return Schema.Value.Evaluate(document.RootElement).IsValid;
    }
}
