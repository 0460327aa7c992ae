using Xunit;

namespace Undercowl.Cli.Tests.Scripts;

public sealed class ScriptTests
{
    [Theory]
    [InlineData("run")]
    [InlineData("undercowl")]
    [InlineData("test")]
    public void Without_the_SDK_a_script_says_in_one_line_what_to_install_and_fails(string script)
    {
        using var bare = new FakeSdk(sdk: false);
        var ran = bare.Run(script);
        Assert.NotEqual(0, ran.Code);
        Assert.Empty(ran.Out);
        var line = Assert.Single(ran.Error.Split('\n', StringSplitOptions.RemoveEmptyEntries));
        Assert.Contains(".NET 10 SDK is missing: install it", line, StringComparison.Ordinal);
    }

    [Fact]
    public void With_an_older_SDK_only_it_says_the_same()
    {
        using var old = new FakeSdk(version: "8.0.404");
        var ran = old.Run("undercowl", "layouts");
        Assert.Equal(1, ran.Code);
        Assert.Contains(".NET 10 SDK is missing: install it", Assert.Single(ran.Error.Split('\n', StringSplitOptions.RemoveEmptyEntries)), StringComparison.Ordinal);
        Assert.Empty(old.Asked);
    }

    [Fact]
    public void The_build_is_called_once_and_not_again_when_nothing_changed()
    {
        using var sdk = new FakeSdk();
        var first = sdk.Run("undercowl", "next", "a b.jsonl").Good();
        Assert.Equal("ran: next a b.jsonl\n", first.Out);
        Assert.Contains("building", first.Error, StringComparison.Ordinal);
        var second = sdk.Run("undercowl", "layouts").Good();
        Assert.Equal(("ran: layouts\n", ""), (second.Out, second.Error));
        Assert.Equal("ran: belief x\n", sdk.Run("run", "belief", "x").Good().Out);
        Assert.Equal(["publish ready-to-run"], sdk.Asked);
    }

    [Fact]
    public void Run_makes_the_app_once_and_serves_it()
    {
        using var sdk = new FakeSdk();
        var first = sdk.Run("run").Good();
        Assert.Contains("http://localhost:5080", first.Out, StringComparison.Ordinal);
        Assert.Contains("building the app", first.Error, StringComparison.Ordinal);
        var second = sdk.Run("run").Good();
        Assert.Equal((first.Out, ""), (second.Out, second.Error));
        Assert.Equal(["publish", "Undercowl.Server.dll", "Undercowl.Server.dll"], sdk.Asked.Select(a => a.Split(' ')[0]));
    }

    [Theory]
    [InlineData("src/Room/One.cs")]
    [InlineData("src/Room/New.cs")]
    [InlineData("knowledge/parts/a.yaml")]
    [InlineData("demo/demo.json")]
    [InlineData("Directory.Packages.props")]
    public void A_source_file_that_is_newer_or_new_is_built(string file)
    {
        using var sdk = new FakeSdk();
        sdk.Run("undercowl").Good();
        sdk.Write(file);
        sdk.Run("undercowl").Good();
        sdk.Run("undercowl").Good();
        Assert.Equal(["publish ready-to-run", "publish ready-to-run"], sdk.Asked);
    }

    [Fact]
    public void A_source_file_that_went_is_built_and_what_builds_leave_behind_is_not()
    {
        using var sdk = new FakeSdk();
        sdk.Run("undercowl").Good();
        sdk.Write("src/Room/obj/made.cs");
        sdk.Run("undercowl").Good();
        Assert.Equal(["publish ready-to-run"], sdk.Asked);
        sdk.Delete("src/Room/One.cs");
        sdk.Run("undercowl").Good();
        Assert.Equal(["publish ready-to-run", "publish ready-to-run"], sdk.Asked);
    }

    [Fact]
    public void A_build_that_fails_is_shown_on_the_error_stream_and_tried_again_the_next_time()
    {
        using var broken = new FakeSdk(builds: false);
        var ran = broken.Run("undercowl", "layouts");
        Assert.Equal((1, ""), (ran.Code, ran.Out));
        Assert.Contains("it does not compile", ran.Error, StringComparison.Ordinal);
        Assert.Contains("the build failed", ran.Error, StringComparison.Ordinal);
        broken.Run("undercowl", "layouts");
        Assert.Equal(["publish ready-to-run", "publish ready-to-run"], broken.Asked);
    }

    [Fact]
    public void With_a_linker_the_program_is_native_code_and_nothing_more_is_said()
    {
        using var sdk = new FakeSdk(linker: true);
        var ran = sdk.Run("undercowl", "layouts").Good();
        Assert.Equal(("ran: layouts\n", "undercowl: building (the first time takes a minute or two)\n"), (ran.Out, ran.Error));
        Assert.Equal(["publish native"], sdk.Asked);
    }

    [Fact]
    public void Where_native_code_cannot_be_made_the_program_is_built_without_and_says_where_to_see_why()
    {
        using var sdk = new FakeSdk(linker: true, links: false);
        var ran = sdk.Run("undercowl", "layouts").Good();
        Assert.Equal("ran: layouts\n", ran.Out);
        Assert.Contains("without native code, which wants clang or gcc (see artifacts/native.log)", ran.Error, StringComparison.Ordinal);
        Assert.Equal(["publish native", "publish ready-to-run"], sdk.Asked);
        Assert.True(sdk.Has("artifacts/native.log"));
        Assert.Empty(sdk.Run("undercowl", "layouts").Good().Error);
    }

    [Fact]
    public void A_new_build_takes_the_place_of_the_old_one_whole()
    {
        using var sdk = new FakeSdk();
        sdk.Run("undercowl").Good();
        sdk.Write("artifacts/undercowl/left-over.dll");
        sdk.Write("src/Room/One.cs");
        sdk.Run("undercowl").Good();
        Assert.False(sdk.Has("artifacts/undercowl/left-over.dll"));
        Assert.True(sdk.Has("artifacts/undercowl/undercowl"));
    }

    [Fact]
    public void Skipped_tests_are_named_with_their_reason_before_the_count()
    {
        using var sdk = new FakeSdk();
        sdk.Report(
            "<TestRun><Results><UnitTestResult testName=\"Disk.Flushed\" outcome=\"Passed\" /><UnitTestResult testName=\"Disk.Full\" outcome=\"NotExecuted\" testId=\"1\">"
            + "<Output><StdOut>mounting is not permitted here</StdOut></Output></UnitTestResult><UnitTestResult testName=\"Disk.Gone\" outcome=\"NotExecuted\" /></Results>"
            + "<ResultSummary><Counters total=\"3\" passed=\"1\" failed=\"0\" /></ResultSummary></TestRun>");
        var ran = sdk.Run("test");
        Assert.Equal(["skipped: Disk.Full: mounting is not permitted here", "skipped: Disk.Gone", "1 passed, 0 failed"], ran.Out.TrimEnd().Split('\n'));
        Assert.Equal(0, ran.Code);
    }
}
