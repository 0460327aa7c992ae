using System.Diagnostics;
using System.Text.Json;
using Xunit;

namespace Undercowl.Cli.Tests;

/// <summary>The program as a person at a terminal meets it: real processes, real files, exit codes.</summary>
public sealed class TerminalTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("undercowl-test-").FullName;

    private string JobPath => Path.Combine(_folder, "visit.jsonl");

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void The_layouts_are_listed_as_an_array()
    {
        var answer = Run("layouts", "--json");
        Assert.Equal(0, answer.Code);
        Assert.Contains("two-stroke-3-cdi", answer.Out, StringComparison.Ordinal);
        Assert.DoesNotContain("cut-down", answer.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void A_job_is_started_a_reading_is_recorded_and_the_belief_comes_most_probable_first()
    {
        Assert.Equal(0, Run("start", JobPath, "--layout", "two-stroke-3-cdi", "--complaint", "no-start").Code);
        Assert.Equal(0, Run("record", JobPath, "fuel-smell", "none").Code);
        var belief = Run("belief", JobPath, "--json");
        Assert.Equal(0, belief.Code);
        using var document = JsonDocument.Parse(belief.Out);
        var now = document.RootElement.GetProperty("causes").EnumerateArray().Select(c => c.GetProperty("now").GetDouble()).ToArray();
        Assert.True(now.Length > 100);
        Assert.Equal(now.OrderDescending(), now);
        Assert.All(now, p => Assert.InRange(p, 0, 1));
    }

    [Fact]
    public void With_nothing_said_of_smell_no_step_that_cranks_is_proposed_and_one_done_anyway_is_recorded_with_a_warning()
    {
        Run("start", JobPath, "--layout", "two-stroke-3-cdi", "--complaint", "no-start");
        using var document = JsonDocument.Parse(Run("next", JobPath, "--top", "50", "--json").Out);
        Assert.DoesNotContain(document.RootElement.GetProperty("proposals").EnumerateArray(), p =>
            p.GetProperty("setUp").TryGetProperty("engine", out var engine) && engine.GetString() is "cranking" or "running");
        Assert.NotEmpty(document.RootElement.GetProperty("withheld").EnumerateArray());
        var anyway = Run("record", JobPath, "spark-to-ground", "--at", "cyl:1", "never");
        Assert.Equal(0, anyway.Code);
        Assert.Contains("withheld", anyway.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_name_that_is_not_known_is_refused_with_a_near_one()
    {
        var answer = Run("start", JobPath, "--layout", "two-stroke-3-cd", "--complaint", "no-start");
        Assert.NotEqual(0, answer.Code);
        Assert.Contains("two-stroke-3-cdi", answer.Error, StringComparison.Ordinal);
        Assert.False(File.Exists(JobPath));
    }

    [Fact]
    public void Sign_off_is_refused_while_the_stop_wire_is_off_and_parts_stand_swapped_and_each_is_named()
    {
        Run("start", JobPath, "--layout", "two-stroke-3-cdi", "--complaint", "no-start");
        Run("record", JobPath, "fuel-smell", "none");
        Run("record", JobPath, "spark-stop-wire-off", "--at", "cyl:1", "always");
        Run("swap", JobPath, "ignition-coil", "cyl:2", "cyl:3");
        var refused = Run("sign-off", JobPath, "--by", "A. Hand");
        Assert.NotEqual(0, refused.Code);
        Assert.Contains("stop wire", refused.Out + refused.Error, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("ignition coil", refused.Out + refused.Error, StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public void The_demonstration_ends_proven()
    {
        var answer = Run("demo", "--json");
        Assert.Equal(0, answer.Code);
        Assert.Contains("\"outcome\":\"proven\"", answer.Out.Replace(" ", "", StringComparison.Ordinal), StringComparison.Ordinal);
    }

    private static (int Code, string Out, string Error) Run(params string[] arguments)
    {
        var start = new ProcessStartInfo(Path.Combine(AppContext.BaseDirectory, "undercowl"))
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            RedirectStandardInput = true,
        };
        foreach (var argument in arguments)
        {
            start.ArgumentList.Add(argument);
        }

        using var process = Process.Start(start)!;
        process.StandardInput.Close();
        var error = process.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken);
        var output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return (process.ExitCode, output, error.GetAwaiter().GetResult());
    }
}
