using System.Diagnostics;
using Undercowl.Knowledge.Tests.Fixtures;
using Undercowl.KnowledgeCompiler;

namespace Undercowl.Knowledge.Tests.Compiler;

/// <summary>The compiler as a process: exit codes, and nothing written when there are problems.</summary>
public sealed class ProgramTests
{
    [Fact]
    public async Task Sound_knowledge_is_written_and_exits_with_0()
    {
        using var small = new SmallKnowledge();
        var (exit, output, error) = await Run("build", small.Folder, small.At("out.json"));
        Assert.Equal((0, "", ""), (exit, output, error));
        Assert.Equal(KnowledgeJson.Write(small.Compile().Knowledge!), File.ReadAllBytes(small.At("out.json")));
    }

    [Fact]
    public async Task Problems_go_to_the_error_output_and_exit_with_1_and_nothing_is_written()
    {
        using var small = new SmallKnowledge();
        small.Change("parts/ring.yaml", "prior: 0.07", "prior: 7");
        var (exit, output, error) = await Run("build", small.Folder, small.At("out.json"));
        Assert.Equal((1, ""), (exit, output));
        Assert.Equal(small.Compile().Problems.Select(p => p.ToString()), error.TrimEnd().Split(Environment.NewLine));
        Assert.False(File.Exists(small.At("out.json")));
    }

    [Theory]
    [InlineData]
    [InlineData("build", "knowledge")]
    [InlineData("check", "knowledge", "--also")]
    [InlineData("compile", "knowledge", "out.json")]
    public async Task Wrong_use_exits_with_2_and_shows_the_use(params string[] arguments)
    {
        var (exit, output, error) = await Run(arguments);
        Assert.Equal((2, ""), (exit, output));
        Assert.Contains("build knowledge out.json", error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_check_counts_what_it_read_and_shows_notes()
    {
        using var small = new SmallKnowledge();
        small.Change("remedies/clean-plug.yaml", "  - {aspect: deposit, not-cured: 0.1}\n", "");
        var (exit, output, _) = await Run("check", small.Folder);
        Assert.Equal(0, exit);
        Assert.Contains("no remedy mends plug.deposit: oily", output, StringComparison.Ordinal);
        Assert.Contains("3 parts, 9 quantities", output, StringComparison.Ordinal);
    }

    private static async Task<(int Exit, string Output, string Error)> Run(params string[] arguments)
    {
        var dotnet = Environment.GetEnvironmentVariable("DOTNET_HOST_PATH") ?? "dotnet";
        using var process = Process.Start(new ProcessStartInfo(dotnet, [typeof(KnowledgeFolder).Assembly.Location, .. arguments]) { RedirectStandardOutput = true, RedirectStandardError = true })!;
        var stop = TestContext.Current.CancellationToken;
        var output = process.StandardOutput.ReadToEndAsync(stop);
        var error = process.StandardError.ReadToEndAsync(stop);
        await process.WaitForExitAsync(stop);
        return (process.ExitCode, await output, await error);
    }
}
