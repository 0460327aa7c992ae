using Undercowl.Cli.Tests.Fixtures;
using Xunit;

namespace Undercowl.Cli.Tests.Working;

public sealed class WordingTests
{
    [Fact]
    public void What_is_to_be_put_back_names_cylinders_in_words()
    {
        using var desk = new Desk();
        desk.Run("undercowl start visit.jsonl --layout two-stroke-3-cdi --complaint no-start").Good();
        desk.Run("undercowl swap visit.jsonl ignition-coil cyl:2 cyl:3").Good();
        desk.Run("undercowl set-up visit.jsonl known-good-plug@cyl:1=yes").Good();
        var refused = desk.Run("undercowl sign-off visit.jsonl --as referred --by technician").Refused().Out.ReplaceLineEndings(" ");
        Assert.Contains("ignition coil of cylinder 3 sits at cylinder 2", refused, StringComparison.Ordinal);
        Assert.Contains("known-good plug fitted at cylinder 1", refused, StringComparison.Ordinal);
        Assert.DoesNotContain("cyl:", refused, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(0.9712, 0, "gone for good with probability 0.97")]
    [InlineData(0.9712, 0.0412, "gone for good with probability 0.97, off by no more than 0.042: this job is too large to sum exactly")]
    [InlineData(0.9712, 1e-7, "gone for good with probability 0.97")]
    [InlineData(0.9712, 2e-6, "gone for good with probability 0.97, off by no more than 0.001: this job is too large to sum exactly")]
    public void How_likely_it_is_gone_for_good_is_said_with_its_bound(double healthy, double bound, string says) => Assert.Equal(says, BeliefText.GoneForGood(healthy, bound));

    [Fact]
    public void Sign_off_and_report_say_how_likely_it_is_gone_for_good()
    {
        using var desk = new Desk();
        desk.Run("undercowl start visit.jsonl --layout two-stroke-3-cdi --complaint no-start").Good();
        Assert.Contains("gone for good with probability 0.", desk.Run("undercowl report visit.jsonl").Good().Out, StringComparison.Ordinal);
        Assert.Equal(0, desk.Run("undercowl report visit.jsonl --json").Json().GetProperty("proof").GetProperty("errorBound").GetDouble());
        Assert.Contains("gone for good with probability 0.", desk.Run("undercowl sign-off visit.jsonl --by technician").Refused().Out, StringComparison.Ordinal);
        Assert.Equal(0, desk.Run("undercowl sign-off visit.jsonl --as referred --by technician --json").Json().GetProperty("errorBound").GetDouble());
    }

    [Fact]
    public void Making_safe_is_not_said_to_take_no_time()
    {
        using var desk = new Desk();
        desk.Run("undercowl start visit.jsonl --layout two-stroke-3-cdi --complaint no-start").Good();
        desk.Run("undercowl record visit.jsonl fuel-smell strong").Good();
        var proposal = desk.Run("undercowl next visit.jsonl --top 1 --json").Json().GetProperty("proposals")[0];
        Assert.Equal("make-safe", proposal.GetProperty("kind").GetString());
        Assert.False(proposal.TryGetProperty("minutes", out _));
        Assert.False(proposal.TryGetProperty("cost", out _));
        Assert.True(proposal.GetProperty("expectedCostToFinish").GetDouble() > 0);
        var next = desk.Run("undercowl next visit.jsonl --top 1").Good().Out;
        Assert.Contains("to finish", next, StringComparison.Ordinal);
        Assert.DoesNotContain(" 0 min", next.ReplaceLineEndings(" "), StringComparison.Ordinal);
        Assert.DoesNotContain("(0 min", next, StringComparison.Ordinal);
    }
}
