using Undercowl.Cli.Tests.Fixtures;
using Xunit;

namespace Undercowl.Cli.Tests.Docs;

/// <summary>The README's "Five minutes with it", line by line as it stands there, in a folder where ./undercowl is this build.</summary>
public sealed class ReadmeTests
{
    /// <summary>What each command of the page must say, in the page's order: its name and words of its answer.</summary>
    private static readonly (string Command, string[] Says)[] Expected =
    [
        ("layouts", ["two-stroke-3-cdi", "Cranks but will not start"]),
        ("start", ["Started visit.jsonl."]),
        ("next", ["Smell for fuel", "Answers: none | faint | strong", "Withheld"]),
        ("record", ["recorded", "fuel-smell at engine: none"]),
        ("record", ["spark-to-ground at cyl:1: never"]),
        ("record", ["spark-to-ground at cyl:2: never"]),
        ("record", ["spark-to-ground at cyl:3: 0 of 3"]),
        ("belief", ["as found", "prior", "%"]),
        ("next", ["Spark to ground with the stop wire off", "spark-stop-wire-off --at cyl:1", "Why:"]),
        ("report", ["JOB RECORD", "Cranks but will not start", "0 of 3", "prevail"]),
    ];

    [Fact]
    public void The_five_minutes_run_as_they_stand_and_each_command_says_something_sensible()
    {
        using var terminal = new Terminal();
        Shim(terminal);
        var lines = Lines();
        Assert.Equal(Expected.Select(e => e.Command), lines.Select(l => l.Split(' ')[1]));
        foreach (var (line, (_, says)) in lines.Zip(Expected))
        {
            var ran = terminal.Other("bash", "-c", line).Good();
            Assert.All(says, words => Assert.Contains(words, ran.Out, StringComparison.Ordinal));
        }
    }

    [Fact]
    public void The_commands_that_the_page_names_in_its_text_exist()
    {
        using var terminal = new Terminal();
        Shim(terminal);
        Assert.Contains("`./undercowl work visit.jsonl`", Repository.Read("README.md"), StringComparison.Ordinal);
        terminal.WithJob();
        Assert.Contains("Step 1", terminal.Other("bash", "-c", "./undercowl work visit.jsonl").Good().Out, StringComparison.Ordinal);
    }

    private static void Shim(Terminal terminal) =>
        terminal.WriteProgram("undercowl", $"#!/bin/sh\nexec '{Path.Combine(AppContext.BaseDirectory, "undercowl")}' \"$@\"\n");

    private static string[] Lines()
    {
        var page = Repository.Read("README.md");
        var section = page[page.IndexOf("## Five minutes with it", StringComparison.Ordinal)..];
        var block = section.Split("```")[1];
        Assert.StartsWith("sh\n", block, StringComparison.Ordinal);
        return [.. block.Split('\n').Skip(1).Where(l => l.Length > 0)];
    }
}
