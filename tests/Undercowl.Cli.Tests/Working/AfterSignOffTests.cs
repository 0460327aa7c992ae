using Undercowl.Cli.Tests.Fixtures;
using Xunit;

namespace Undercowl.Cli.Tests.Working;

public sealed class AfterSignOffTests
{
    [Fact]
    public void A_reading_after_it_opens_the_job_again_and_says_so_and_a_note_does_not()
    {
        using var desk = new Desk();
        desk.Run("undercowl start visit.jsonl --layout two-stroke-3-cdi --complaint no-start").Good();
        Assert.DoesNotContain("signed off", desk.Run("undercowl record visit.jsonl lanyard-clip home").Good().Error, StringComparison.Ordinal);
        desk.Run("undercowl sign-off visit.jsonl --as referred --by technician").Good();
        Assert.DoesNotContain("signed off", desk.Run("undercowl note visit.jsonl collected").Good().Error, StringComparison.Ordinal);
        Assert.Contains("signed off as referred. It is open again", desk.Run("undercowl record visit.jsonl lanyard-clip off").Good().Error, StringComparison.Ordinal);
        Assert.DoesNotContain("signed off", desk.Run("undercowl record visit.jsonl lanyard-clip home").Good().Error, StringComparison.Ordinal);
        Assert.Contains("open", desk.Run("undercowl report visit.jsonl").Good().Out, StringComparison.Ordinal);
    }
}
