using Undercowl.Cli.Tests.Fixtures;
using Xunit;

namespace Undercowl.Cli.Tests.Files;

public sealed class LockTests
{
    [Fact]
    public void While_one_process_works_on_a_job_a_second_that_would_write_is_refused_and_one_that_reads_is_not()
    {
        using var terminal = new Terminal().WithJob();
        using var first = terminal.Start("work", "visit.jsonl", "--json");
        // Its first line says that it has the job.
        Assert.Contains("\"event\":\"step\"", first.StandardOutput.ReadLine(), StringComparison.Ordinal);
        var before = terminal.Read("visit.jsonl");
        terminal.Run("note", "visit.jsonl", "second").Refused("visit.jsonl", "open in another program", "Close it there first, or work on a copy and merge the two later.");
        terminal.Run("work", "visit.jsonl").Refused("open in another program");
        Assert.Equal(before, terminal.Read("visit.jsonl"));
        Assert.Contains("Cranks but will not start", terminal.Run("report", "visit.jsonl").Good().Out, StringComparison.Ordinal);
        terminal.Run("belief", "visit.jsonl", "--top", "1").Good();
        Assert.Equal(0, Terminal.End(first).Code);
        terminal.Run("note", "visit.jsonl", "now it may").Good();
    }

    [Fact]
    public void A_process_that_was_killed_leaves_the_job_free()
    {
        using var terminal = new Terminal().WithJob();
        using (var first = terminal.Start("work", "visit.jsonl", "--json"))
        {
            Assert.NotNull(first.StandardOutput.ReadLine());
            first.Kill();
            first.WaitForExit();
        }

        terminal.Run("note", "visit.jsonl", "goes on").Good();
    }
}
