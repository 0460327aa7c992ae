using Undercowl.Cli.Tests.Fixtures;
using Xunit;

namespace Undercowl.Cli.Tests.Working;

/// <summary>Jobs that end otherwise than proven, walked to their end: each with what stays open, and nothing disturbed left behind.</summary>
public sealed class NamedEndingsTests
{
    [Fact]
    public void Started_on_a_booster_it_gets_home_once_the_booster_is_off_and_the_battery_stays_open()
    {
        using var desk = new Desk();
        desk.Run("undercowl start visit.jsonl --layout two-stroke-3-cdi --complaint no-start").Good();
        desk.Run("undercowl record visit.jsonl fuel-smell none").Good();
        desk.Run("undercowl record visit.jsonl battery-rest-volts --at side:boat 11.9V").Good();
        desk.Run("undercowl record visit.jsonl battery-cranking-volts --at side:boat 8.4V").Good();
        desk.Run("undercowl record visit.jsonl booster-crank brisk").Good();
        desk.Run("undercowl record visit.jsonl starting-test --set-up booster=yes runs-well").Good();
        Assert.Contains("No good reading", desk.Run("undercowl sign-off visit.jsonl --by technician").Refused().Out, StringComparison.Ordinal);
        Assert.Contains("booster", desk.Run("undercowl sign-off visit.jsonl --as get-home --by technician").Refused().Out, StringComparison.Ordinal);

        desk.Run("undercowl set-up visit.jsonl booster=no").Good();
        var ended = desk.Run("undercowl sign-off visit.jsonl --as get-home --by technician --json").Good().Json();
        var open = ended.GetProperty("open").EnumerateArray().Select(o => o.GetString()!).ToArray();
        Assert.Equal("get-home", ended.GetProperty("outcome").GetString());
        Assert.Contains(open, o => o.Contains("not yet likely enough", StringComparison.Ordinal) && o.Contains("battery", StringComparison.Ordinal));
        Assert.Contains(open, o => o.Contains("No good reading", StringComparison.Ordinal));
        Assert.Contains("get-home", desk.Run("undercowl report visit.jsonl").Good().Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Worn_rings_are_put_to_the_test_and_then_handed_on_and_the_job_says_what_stays_open()
    {
        using var desk = new Desk();
        desk.Run("undercowl start visit.jsonl --layout four-stroke-4-inductive --complaint misses").Good();
        desk.Run("undercowl record visit.jsonl fuel-smell none").Good();
        desk.Run("undercowl record visit.jsonl plug-deposit --at cyl:3 oily").Good();
        foreach (var (cylinder, psi) in ((int, int)[])[(1, 195), (2, 190), (3, 140), (4, 192)])
        {
            desk.Run($"undercowl record visit.jsonl compression-dry --at cyl:{cylinder} {psi}psi").Good();
        }

        desk.Run("undercowl record visit.jsonl compression-oiled --at cyl:3 175psi").Good();
        Assert.Equal("leak-down", Steps(desk)[0]);
        desk.Run("undercowl record visit.jsonl leak-down --at cyl:3 rings").Good();
        Assert.Equal("", Steps(desk)[0]);

        Assert.Contains("plugs out", desk.Run("undercowl sign-off visit.jsonl --as referred --by technician").Refused().Out, StringComparison.Ordinal);
        desk.Run("undercowl set-up visit.jsonl plugs=in").Good();
        var ended = desk.Run("undercowl sign-off visit.jsonl --as referred --by technician --json").Good().Json();
        Assert.Equal("referred", ended.GetProperty("outcome").GetString());
        Assert.Contains(ended.GetProperty("open").EnumerateArray(), o => o.GetString()!.Contains("piston rings", StringComparison.Ordinal));
        Assert.Contains("referred", desk.Run("undercowl report visit.jsonl").Good().Out, StringComparison.Ordinal);
    }

    private static string[] Steps(Desk desk) => [.. desk.Run("undercowl next visit.jsonl --json").Good().Json().GetProperty("proposals").EnumerateArray().Select(p => p.GetProperty("id").GetString()!)];
}
