using System.Globalization;
using Undercowl.Cli.Tests.Fixtures;
using Xunit;

namespace Undercowl.Cli.Tests.Working;

/// <summary>Ctrl-C is a signal to the process: what was being recorded is recorded whole, or not begun.</summary>
public sealed class InterruptTests
{
    private const int Interrupted = 130;

    [Fact]
    public void While_a_step_waits_for_its_answer_Ctrl_C_ends_the_program_with_130_and_leaves_all_that_was_answered()
    {
        using var terminal = new Terminal().WithJob();
        using var process = terminal.Start("work", "visit.jsonl", "--json");
        process.StandardInput.Write("ok\nnone\n");
        process.StandardInput.Flush();
        for (var line = process.StandardOutput.ReadLine(); !line!.Contains("\"answer\":\"none\"", StringComparison.Ordinal);)
        {
            line = process.StandardOutput.ReadLine();
        }

        Terminal.Interrupt(process);
        process.WaitForExit();
        Assert.Equal(Interrupted, process.ExitCode);
        var report = terminal.Run("report", "visit.jsonl").Good();
        Assert.Empty(report.Error);
        Assert.Contains("no smell", report.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void At_whatever_moment_Ctrl_C_comes_the_job_is_whole_and_what_was_said_to_be_recorded_is_in_it()
    {
        using var terminal = new Terminal().WithJob();
        var seed = Environment.TickCount;
        var random = new Random(seed);
        var codes = new List<int>();
        for (var i = 0; i < 20; i++)
        {
            var words = $"note {i.ToString(CultureInfo.InvariantCulture)} of {seed.ToString(CultureInfo.InvariantCulture)}";
            using var process = terminal.Start("note", "visit.jsonl", words);
            Thread.Sleep(random.Next(600));
            Terminal.Interrupt(process);
            var ran = Terminal.End(process);
            codes.Add(ran.Code);
            Assert.Contains(ran.Code, (int[])[0, Interrupted]);
            var report = terminal.Run("report", "visit.jsonl", "--json").Good();
            Assert.Empty(report.Error);
            if (ran.Code == 0 || ran.Out.Contains("recorded", StringComparison.Ordinal))
            {
                Assert.Contains(words, report.Out, StringComparison.Ordinal);
            }
        }

        Assert.Contains(Interrupted, codes);
        Assert.False(File.Exists(terminal.PathOf("visit.jsonl.torn")));
    }
}
