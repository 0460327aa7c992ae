using Undercowl.Cli.Tests.Fixtures;
using Xunit;

namespace Undercowl.Cli.Tests.Working;

public sealed class MendedSinceTests
{
    [Fact]
    public void What_was_the_matter_is_still_told_when_it_was_mended_and_low_in_the_list()
    {
        using var desk = new Desk();
        foreach (var line in (string[])
            [
                "start visit.jsonl --layout two-stroke-3-cdi --complaint misses",
                "record visit.jsonl fuel-smell none",
                "record visit.jsonl spark-to-ground --at cyl:1 always",
                "record visit.jsonl spark-to-ground --at cyl:2 never",
                "record visit.jsonl spark-to-ground --at cyl:3 always",
                "swap visit.jsonl ignition-coil cyl:2 cyl:3",
                "record visit.jsonl spark-to-ground --at cyl:2 always",
                "record visit.jsonl spark-to-ground --at cyl:3 never",
            ])
        {
            desk.Run("undercowl " + line).Good();
        }

        Assert.DoesNotContain("dealt with since", desk.Run("undercowl belief visit.jsonl --top 3").Good().Out, StringComparison.Ordinal);
        desk.Run("undercowl remedy visit.jsonl replace-ignition-coil --at cyl:3").Good();
        var after = desk.Run("undercowl belief visit.jsonl --top 3").Good().Out;
        var heading = after.IndexOf("As found, and dealt with since", StringComparison.Ordinal);
        Assert.True(heading > 0, after);
        Assert.Contains("ignition-coil@cyl:2.winding=open", after[heading..], StringComparison.Ordinal);
    }
}
