using Undercowl.Cli.Tests.Fixtures;
using Xunit;

namespace Undercowl.Cli.Tests.Working;

public sealed class WorkTests
{
    [Fact]
    public void A_job_worked_through_pipes_ends_proven_and_the_same_lines_piped_at_once_end_it_alike()
    {
        using var terminal = new Terminal().WithJob("one.jsonl").WithJob("two.jsonl");
        var (ran, documents, typed) = WorkedByHand.To(terminal, "one.jsonl");
        Assert.Equal(0, ran.Code);
        Assert.Equal("proven", documents[^1].GetProperty("outcome").GetString());
        Assert.Contains("sign technician", typed);

        var again = terminal.Feed(string.Join('\n', typed) + "\n", "work", "two.jsonl").Good();
        Assert.Contains("Signed off as proven", again.Out, StringComparison.Ordinal);
        Assert.Contains("Nothing more to spend. Why: the complaint's own test is good", again.Out, StringComparison.Ordinal);
        Assert.DoesNotContain(" 0 min", again.Out.ReplaceLineEndings(" "), StringComparison.Ordinal);
        Assert.Contains("prevail", again.Out, StringComparison.Ordinal);
        Assert.DoesNotContain("> ", again.Error, StringComparison.Ordinal);
        Assert.Equal(Kinds("one.jsonl"), Kinds("two.jsonl"));

        // A job that has ended is not put further steps.
        var after = terminal.Feed("ok\n", "work", "one.jsonl").Good();
        Assert.Contains("Signed off as proven after 0 steps here.", after.Out, StringComparison.Ordinal);

        string[] Kinds(string job) => [.. terminal.Run("report", job, "--json").Json().GetProperty("entries").EnumerateArray().Select(e => $"{e.GetProperty("kind")} {e.GetProperty("text")}")];
    }

    [Fact]
    public void Each_step_is_told_before_its_answer_is_taken_and_cautions_come_before_all_else()
    {
        using var terminal = new Terminal().WithJob();
        var refused = terminal.Feed("none\n", "work", "visit.jsonl", "--json");
        refused.Refused("The cautions of this step are not acknowledged.", "Read them and type ok");
        Assert.Equal(["step", "ended"], refused.JsonLines().Select(d => d.GetProperty("event").GetString()!));
        Assert.Single(terminal.Read("visit.jsonl").TrimEnd().Split('\n'));

        var good = terminal.Feed("ok\nnone\n", "work", "visit.jsonl", "--json").Good();
        Assert.Equal(["step", "recorded", "recorded", "step", "ended"], good.JsonLines().Select(d => d.GetProperty("event").GetString()!));
        Assert.NotEmpty(good.JsonLines()[0].GetProperty("step").GetProperty("cautions").EnumerateArray());
    }

    [Fact]
    public void The_end_of_input_leaves_the_job_open_with_all_that_was_answered()
    {
        using var terminal = new Terminal().WithJob();
        var nothing = terminal.Run("work", "visit.jsonl", "--json").Good();
        Assert.Equal("open", nothing.JsonLines()[^1].GetProperty("outcome").GetString());
        var before = terminal.Read("visit.jsonl");
        // The last line has no line end: it is an answer all the same.
        terminal.Feed("ok\nnone\nnote smells clean", "work", "visit.jsonl").Good();
        var report = terminal.Run("report", "visit.jsonl").Good().Out;
        Assert.Contains("no smell", report, StringComparison.Ordinal);
        Assert.Contains("smells clean", report, StringComparison.Ordinal);
        Assert.StartsWith(before, terminal.Read("visit.jsonl"), StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_no_answer_skips_undoes_explains_and_quits()
    {
        using var terminal = new Terminal().WithJob();
        var ran = terminal.Feed("help\nwhy\nok\nnone\nother\nskip\nundo\nquit\nnever read\n", "work", "visit.jsonl").Good();
        Assert.Contains("An answer to the step, or:", ran.Out, StringComparison.Ordinal);
        Assert.Contains("as found", ran.Out, StringComparison.Ordinal);
        Assert.Contains("Type other N to take one of them.", ran.Out, StringComparison.Ordinal);
        Assert.Contains("taken back", ran.Out, StringComparison.Ordinal);
        var report = terminal.Run("report", "visit.jsonl", "--json").Json();
        Assert.DoesNotContain(report.GetProperty("entries").EnumerateArray(), e => e.GetProperty("kind").GetString() == "finding");
        Assert.Single(report.GetProperty("withdrawn").EnumerateArray());
    }

    [Theory]
    [InlineData("ok\nnoone\n", "is no answer", "Did you mean none")]
    [InlineData("other 999\n", "There is no other step 999.", "a number from 1 to")]
    [InlineData("undo\n", "Nothing was recorded here yet.", "undercowl withdraw")]
    [InlineData("restore\n", "Nothing is to be put back.", "The restore list is empty.")]
    public void A_refused_answer_ends_the_work_says_how_to_mend_it_and_leaves_the_job_whole(string typed, string what, string mend)
    {
        using var terminal = new Terminal().WithJob();
        terminal.Feed(typed + "none\n", "work", "visit.jsonl").Refused(what, mend);
        Assert.Empty(terminal.Run("report", "visit.jsonl").Good().Error);
        Assert.DoesNotContain("no smell", terminal.Run("report", "visit.jsonl").Out, StringComparison.Ordinal);
    }

    [Fact]
    public void The_demonstration_ends_proven_and_can_be_kept()
    {
        using var terminal = new Terminal();
        var demo = terminal.Run("demo", "--keep", "demo.jsonl", "--json").Good();
        Assert.Equal("proven", demo.JsonLines()[^1].GetProperty("outcome").GetString());
        var report = terminal.Run("report", "demo.jsonl", "--json").Json();
        Assert.Equal("proven", report.GetProperty("outcome").GetString());
        Assert.InRange(report.GetProperty("proof").GetProperty("healthyNow").GetDouble(), 0.95, 1);
        // The hidden fault leads although nothing but the readings was told.
        Assert.Equal("engine-harness@side:engine.stop-wire=grounded", report.GetProperty("leading")[0].GetProperty("cause").GetString());
        terminal.Run("demo", "--keep", "demo.jsonl").Refused("already holds a job", "Choose another name");
    }
}
