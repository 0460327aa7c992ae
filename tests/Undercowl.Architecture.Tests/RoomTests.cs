using System.Reflection;
using Xunit;

namespace Undercowl.Architecture.Tests;

/// <summary>Which room may know of which. What a compiled room refers to is read from its assembly, so nothing hides.</summary>
public sealed class RoomTests
{
    private const string Prefix = "Undercowl.";

    public static TheoryData<string, string[]> Rooms => new()
    {
        { "Undercowl.Physics", [] },
        { "Undercowl.Inference", [] },
        { "Undercowl.Planning", [] },
        { "Undercowl.Jobs", [] },
        { "Undercowl.Knowledge", ["Undercowl.Physics"] },
        { "Undercowl.KnowledgeCompiler", ["Undercowl.Knowledge", "Undercowl.Physics"] },
        { "Undercowl.Diagnosis", ["Undercowl.Jobs", "Undercowl.Knowledge", "Undercowl.Planning", "Undercowl.Inference", "Undercowl.Physics"] },
        { "Undercowl.App", ["Undercowl.Diagnosis", "Undercowl.Jobs", "Undercowl.Knowledge"] },
        { "Undercowl.Server", ["Undercowl.App"] },
        { "undercowl", ["Undercowl.Diagnosis", "Undercowl.Jobs", "Undercowl.Knowledge", "Undercowl.KnowledgeCompiler", "Undercowl.Inference", "Undercowl.Planning", "Undercowl.Physics"] },
    };

    [Theory]
    [MemberData(nameof(Rooms))]
    public void A_room_refers_only_to_the_rooms_it_may_know(string room, string[] allowed)
    {
        var refers = References(room).Where(name => name.StartsWith(Prefix, StringComparison.Ordinal)).ToArray();
        Assert.Empty(refers.Except(allowed));
    }

    [Theory]
    [InlineData("Undercowl.Physics")]
    [InlineData("Undercowl.Inference")]
    [InlineData("Undercowl.Planning")]
    [InlineData("Undercowl.Jobs")]
    [InlineData("Undercowl.Knowledge")]
    [InlineData("Undercowl.Diagnosis")]
    public void What_runs_in_the_browser_needs_nothing_but_the_framework(string room) =>
        Assert.DoesNotContain(References(room), name =>
            !name.StartsWith("System", StringComparison.Ordinal) && !name.StartsWith(Prefix, StringComparison.Ordinal) && name is not ("netstandard" or "Microsoft.Win32.Primitives"));

    [Fact]
    public void The_table_above_names_every_room_there_is()
    {
        var projects = Directory.EnumerateFiles(Path.Combine(Repository.Root, "src"), "*.csproj", SearchOption.AllDirectories)
            .Select(Path.GetFileNameWithoutExtension).Select(n => n == "Undercowl.Cli" ? "undercowl" : n);
        Assert.Equal(Rooms.Select(r => r.Data.Item1).Order(StringComparer.Ordinal), projects.Order(StringComparer.Ordinal));
    }

    /// <summary>App and server are no libraries that a test could stand on: they are read from where they were built.</summary>
    private static Assembly Load(string room) => room is "Undercowl.App" or "Undercowl.Server"
        ? Assembly.LoadFile(Repository.PathOf($"src/{room}/bin/{Configuration}/net10.0/{room}.dll"))
        : Assembly.Load(room);

    private static string Configuration => new DirectoryInfo(AppContext.BaseDirectory).Parent!.Name;

    private static IEnumerable<string> References(string room) =>
        Load(room).GetReferencedAssemblies().Select(a => a.Name!);
}
