namespace Undercowl.Jobs.Tests.Ids;

public sealed class PartIdTests
{
    [Theory]
    [InlineData("plug", "plug", null, null)]
    [InlineData("ignition-coil@cyl:2", "ignition-coil", "cyl:2", null)]
    [InlineData("control-unit@engine/out-1", "control-unit", "engine", "out-1")]
    [InlineData("control-unit/2", "control-unit", null, "2")]
    [InlineData("group-connector@side:boat", "group-connector", "side:boat", null)]
    public void Parts_are_read_and_written_alike(string text, string kind, string? place, string? output)
    {
        var part = PartId.Parse(text);
        Assert.Equal((kind, place, output), (part.Kind, part.Place?.Text, part.Output));
        Assert.Equal(text, part.ToString());
        Assert.Equal(part, PartId.Of(kind, place is null ? null : Place.Parse(place), output));
    }

    [Theory]
    [InlineData("", "is not a part")]
    [InlineData("2-coil", "is not a part")]
    [InlineData("Coil@cyl:2", "is not a part")]
    [InlineData("coil cyl:2", "is not a part")]
    [InlineData("coil@", "\"\" is not a place")]
    [InlineData("coil@cyl:0", "\"cyl:0\" is not a place")]
    [InlineData("coil@cyl:2@cyl:3", "\"cyl:2@cyl:3\" is not a place")]
    [InlineData("coil/", "is not a part")]
    [InlineData("coil/a/b", "is not a part")]
    [InlineData("coil/Out", "is not a part")]
    [InlineData("coil/a@cyl:2", "is not a part")]
    public void Other_texts_are_refused_naming_what_is_wrong(string text, string what)
    {
        Assert.False(PartId.TryParse(text, out _));
        var problem = Assert.Throws<JobException>(() => PartId.Parse(text)).Problem;
        Assert.Contains(what, problem.What, StringComparison.Ordinal);
        Assert.Contains("kind[@place][/output]", problem.Mend, StringComparison.Ordinal);
    }
}
