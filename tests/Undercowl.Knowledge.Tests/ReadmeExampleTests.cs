using Undercowl.Knowledge.Checking;
using Undercowl.Knowledge.Tests.Fixtures;
using Undercowl.KnowledgeCompiler;

namespace Undercowl.Knowledge.Tests;

public sealed class ReadmeExampleTests
{
    [Fact]
    public void The_example_of_the_knowledge_readme_does_what_it_says()
    {
        using var small = new SmallKnowledge();
        var bytes = KnowledgeJson.Write(small.Compile().Knowledge!);

        // Example of Undercowl.Knowledge begins
        var knowledge = KnowledgeJson.Read(bytes);
        var layout = knowledge.Layouts[0];
        var parts = LayoutPlaces.Of(layout).Select(part => part.Id);
        var faults = KnowledgeCheck.Faults(knowledge);
        // Example ends
        Assert.Equal(["coil@cyl:1", "coil@cyl:2", "plug@cyl:1", "plug@cyl:2", "ring@cyl:1", "ring@cyl:2"], parts);
        Assert.Empty(faults);
    }

    [Fact]
    public void The_example_of_the_compiler_readme_does_what_it_says()
    {
        using var small = new SmallKnowledge();
        var folder = small.Folder;

        // Example of Undercowl.KnowledgeCompiler begins
        var result = KnowledgeFolder.Compile(folder);
        foreach (var problem in result.Problems)
        {
            Console.Error.WriteLine(problem);
        }

        var hash = result.Knowledge is { } knowledge ? KnowledgeHash.Of(KnowledgeJson.Write(knowledge)) : null;
        // Example ends
        Assert.StartsWith("sha256:", hash, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("Undercowl.Knowledge")]
    [InlineData("Undercowl.KnowledgeCompiler")]
    public void A_readme_shows_that_very_code_and_is_no_longer_than_twenty_lines(string project)
    {
        var readme = Lines($"src/{project}/README.md");
        var shown = readme.SkipWhile(line => line != "```csharp").Skip(1).TakeWhile(line => line != "```");
        var compiled = Lines("tests/Undercowl.Knowledge.Tests/ReadmeExampleTests.cs")
            .SkipWhile(line => line.Trim() != $"// Example of {project} begins").Skip(1)
            .TakeWhile(line => line.Trim() != "// Example ends").Select(line => line.Length > 8 ? line[8..] : "");
        Assert.Equal(compiled, shown);
        Assert.InRange(readme.Length, 1, 20);
    }

    private static string[] Lines(string path) => File.ReadAllText(Repository.PathOf(path)).TrimEnd('\n').Split('\n');
}
