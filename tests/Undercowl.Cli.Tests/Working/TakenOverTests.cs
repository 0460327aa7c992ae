using Undercowl.Cli.Tests.Fixtures;
using Xunit;

namespace Undercowl.Cli.Tests.Working;

/// <summary>A reading is taken in the state that the engine was left in, and that is said.</summary>
public sealed class TakenOverTests
{
    [Fact]
    public void What_a_check_left_standing_is_named_with_the_next_reading_and_how_to_say_otherwise()
    {
        using var desk = PlugsOut();
        var recorded = desk.Run("undercowl record visit.jsonl cranking-rpm 250rpm").Good();
        Assert.Contains("taken with: all plugs out (as the engine stands; say --set-up plugs=in if not)", recorded.Out.ReplaceLineEndings(" "), StringComparison.Ordinal);
        var report = desk.Run("undercowl report visit.jsonl").Good().Out.ReplaceLineEndings(" ");
        Assert.Contains("Cranking speed: 250 rpm (taken with: all plugs out)", string.Join(' ', report.Split(' ', StringSplitOptions.RemoveEmptyEntries)), StringComparison.Ordinal);
    }

    [Fact]
    public void A_program_is_told_the_same()
    {
        using var desk = PlugsOut();
        desk.Run("undercowl set-up visit.jsonl known-good-plug@cyl:2=yes").Good();
        var taken = desk.Run("undercowl record visit.jsonl cranking-rpm 250rpm --json").Json().GetProperty("takenWith").EnumerateArray().ToArray();
        Assert.Equal(
            ["known-good-plug@cyl:2 yes known-good plug fitted at cylinder 2 no", "plugs out all plugs out in"],
            taken.Select(t => string.Join(' ', t.EnumerateObject().Select(m => m.Value.GetString()))));
    }

    [Fact]
    public void Work_says_it_too()
    {
        using var terminal = new Terminal().WithJob();
        terminal.Run("record", "visit.jsonl", "fuel-smell", "none").Good();
        terminal.Run("record", "visit.jsonl", "spark-plugs-out", "--at", "cyl:1", "never").Good();
        var open = terminal.Run("next", "visit.jsonl", "--top", "40", "--json").Json().GetProperty("proposals").EnumerateArray().ToArray();
        var at = Array.FindIndex(open, p => p.GetProperty("id").GetString() == "battery-rest-volts");
        Assert.Equal("out", open[at].GetProperty("setUp").GetProperty("plugs").GetString());
        var lines = $"other {at + 1}\nok\n12.4V\nquit\n";
        terminal.Write("again.jsonl", terminal.Read("visit.jsonl"));
        var told = terminal.Feed(lines, "work", "visit.jsonl").Good().Out;
        Assert.Contains("taken with: all plugs out (as the engine stands; undo, then undercowl record it with --set-up plugs=in if not)", string.Join(' ', told.Split((char[])[' ', '\n'], StringSplitOptions.RemoveEmptyEntries)), StringComparison.Ordinal);
        var recorded = terminal.Feed(lines, "work", "again.jsonl", "--json").Good().JsonLines().Where(d => d.GetProperty("event").GetString() == "recorded").ToArray();
        Assert.Equal("plugs", recorded.Single(d => d.GetProperty("answer").GetString() == "12.4V").GetProperty("takenWith")[0].GetProperty("setUp").GetString());
        Assert.Empty(recorded.Single(d => d.GetProperty("answer").GetString() == "ok").GetProperty("takenWith").EnumerateArray());
    }

    [Theory]
    [InlineData("undercowl record visit.jsonl cranking-rpm --set-up plugs=in 250rpm")]
    [InlineData("undercowl record visit.jsonl cranking-rpm --set-up plugs=out 250rpm")]
    [InlineData("undercowl record visit.jsonl compression-dry --at cyl:2 110psi")]
    public void What_the_person_or_the_check_says_is_not_taken_over(string line)
    {
        using var desk = PlugsOut();
        Assert.DoesNotContain("taken with", desk.Run(line).Good().Out, StringComparison.Ordinal);
    }

    [Fact]
    public void On_an_engine_as_usual_nothing_is_said()
    {
        using var desk = PlugsOut();
        desk.Run("undercowl restore visit.jsonl all").Good();
        Assert.DoesNotContain("taken with", desk.Run("undercowl record visit.jsonl cranking-rpm 250rpm").Good().Out, StringComparison.Ordinal);
        Assert.DoesNotContain("250 rpm (taken with", desk.Run("undercowl report visit.jsonl").Good().Out, StringComparison.Ordinal);
    }

    private static Desk PlugsOut()
    {
        var desk = new Desk();
        desk.Run("undercowl start visit.jsonl --layout two-stroke-3-cdi --complaint no-start").Good();
        desk.Run("undercowl record visit.jsonl fuel-smell none").Good();
        desk.Run("undercowl record visit.jsonl spark-plugs-out --at cyl:1 never").Good();
        return desk;
    }
}
