using Undercowl.KnowledgeCompiler;

namespace Undercowl.Knowledge.Tests.Compiler;

public sealed class RealKnowledgeTests
{
    [Fact]
    public void The_knowledge_of_the_repository_compiles_without_problems()
    {
        var result = KnowledgeFolder.Compile(Repository.PathOf("knowledge"));
        Assert.Empty(result.Problems);
        Assert.NotEmpty(result.Knowledge!.Checks);
        Assert.NotEmpty(result.Knowledge.Layouts);
    }

    [Fact]
    public void The_layouts_that_only_tests_use_compile_with_it()
    {
        var result = KnowledgeFolder.Compile(Repository.PathOf("knowledge"), Repository.PathOf("tests/layouts"));
        Assert.DoesNotContain(result.Problems, p => p.File.Contains("/layouts/", StringComparison.Ordinal));
        Assert.Contains(result.Knowledge!.Layouts, l => l.TestOnly);
    }
}
