namespace Undercowl.Jobs.Tests.Ids;

public sealed class PlaceTests
{
    [Theory]
    [InlineData("engine", new int[0])]
    [InlineData("cyl:1", new[] { 1 })]
    [InlineData("cyl:12", new[] { 12 })]
    [InlineData("pair:1+4", new[] { 1, 4 })]
    [InlineData("group:1+2+3", new[] { 1, 2, 3 })]
    [InlineData("group:9+10", new[] { 9, 10 })]
    [InlineData("bank:A", new int[0])]
    [InlineData("side:boat", new int[0])]
    [InlineData("side:engine", new int[0])]
    public void Places_are_read_and_written_alike(string text, int[] cylinders)
    {
        var place = Place.Parse(text);
        Assert.Equal(text, place.ToString());
        Assert.Equal(cylinders, place.Cylinders);
    }

    [Theory]
    [InlineData("")]
    [InlineData("Engine")]
    [InlineData("cyl")]
    [InlineData("cyl:")]
    [InlineData("cyl:0")]
    [InlineData("cyl:02")]
    [InlineData("cyl:100")]
    [InlineData("cyl:1+2")]
    [InlineData("cyl:2 ")]
    [InlineData("pair:1")]
    [InlineData("pair:4+1")]
    [InlineData("pair:1+1")]
    [InlineData("pair:1+2+3")]
    [InlineData("pair:1+")]
    [InlineData("group:1")]
    [InlineData("group:2+1")]
    [InlineData("bank:a")]
    [InlineData("bank:AB")]
    [InlineData("side:port")]
    [InlineData("engine:1")]
    public void Other_texts_are_refused_with_the_list_of_places(string text)
    {
        Assert.False(Place.TryParse(text, out _));
        var problem = Assert.Throws<JobException>(() => Place.Parse(text)).Problem;
        Assert.Contains($"\"{text}\"", problem.What, StringComparison.Ordinal);
        Assert.Contains("pair:1+4", problem.Mend, StringComparison.Ordinal);
    }

    [Fact]
    public void The_default_is_the_engine_as_a_whole() => Assert.Equal(Place.Parse("engine"), default);
}
