using Undercowl.Cli.Tests.Fixtures;
using Xunit;

namespace Undercowl.Cli.Tests.Files;

/// <summary>A finding of a job file whose reading the check does not know is told by line and entry; belief goes on without it.</summary>
public sealed class UnknownReadingTests
{
    [Theory]
    [InlineData("never", "\"reading\":{\"choice\":\"never\"}", "\"reading\":{\"choice\":\"nevr\"}", "no reading \"nevr\"; it knows never, sometimes, always, or a count.")]
    [InlineData("never", "\"reading\":{\"choice\":\"never\"}", "\"reading\":{\"number\":{\"unit\":\"V\",\"value\":\"3\"}}", "no reading 3 V; it knows never")]
    [InlineData("never", "\"reading\":{\"choice\":\"never\"}", "\"reading\":{\"open\":true}", "no reading \"open\"; it knows never")]
    public void It_is_named_with_its_line_and_what_the_check_knows(string typed, string written, string instead, string says)
    {
        using var desk = new Desk();
        desk.Run("undercowl start visit.jsonl --layout two-stroke-3-cdi --complaint no-start").Good();
        var without = desk.Run("undercowl belief visit.jsonl --json").Json();
        var recorded = desk.Run($"undercowl record visit.jsonl spark-to-ground --at cyl:2 {typed} --json").Json();
        var id = recorded.GetProperty("entries")[0].GetProperty("entry").GetString()!;
        var text = File.ReadAllText(desk.PathOf("visit.jsonl"));
        Assert.Contains(written, text, StringComparison.Ordinal);
        File.WriteAllText(desk.PathOf("visit.jsonl"), text.Replace(written, instead, StringComparison.Ordinal));

        var ran = desk.Run("undercowl belief visit.jsonl --json");
        Assert.Contains("visit.jsonl, line 2: spark-to-ground at cyl:2", ran.Error, StringComparison.Ordinal);
        Assert.Contains(id[^8..], ran.Error, StringComparison.Ordinal);
        Assert.Contains(says, ran.Error, StringComparison.Ordinal);
        var belief = ran.Json();
        Assert.Contains(id, Assert.Single(belief.GetProperty("withoutEffect").EnumerateArray()).GetString(), StringComparison.Ordinal);
        Assert.Equal(without.GetProperty("causes").ToString(), belief.GetProperty("causes").ToString());
        Assert.Contains("Without effect", desk.Run("undercowl report visit.jsonl").Good().Out, StringComparison.Ordinal);

        // Told once, also by a command that writes; and no more when it is taken back.
        var noted = desk.Run("undercowl record visit.jsonl tank-level enough").Good().Error;
        Assert.Single(noted.Split('\n'), l => l.Contains("has no effect", StringComparison.Ordinal));
        desk.Run($"undercowl withdraw visit.jsonl {id}").Good();
        Assert.Empty(desk.Run("undercowl belief visit.jsonl").Good().Error);
    }
}
