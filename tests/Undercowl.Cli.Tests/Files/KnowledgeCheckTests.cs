using Undercowl.Cli.Tests.Fixtures;
using Xunit;

namespace Undercowl.Cli.Tests.Files;

public sealed class KnowledgeCheckTests
{
    [Theory]
    [InlineData("empty", "there are no knowledge files in this folder")]
    [InlineData("nowhere", "there is no such folder")]
    public void A_folder_without_knowledge_is_not_in_order(string folder, string says)
    {
        using var terminal = new Terminal();
        Directory.CreateDirectory(terminal.PathOf("empty"));
        var ran = terminal.Run("knowledge", "check", folder).Refused($"{folder}:1: {says}");
        Assert.DoesNotContain("In order", ran.Out, StringComparison.Ordinal);
        Assert.Contains("1 problem.", ran.Out, StringComparison.Ordinal);
        Assert.Equal(1, terminal.Run("knowledge", "check", folder, "--json").Code);
    }

    [Fact]
    public void Several_problems_are_counted_as_several()
    {
        using var terminal = new Terminal();
        terminal.Write("two/nothing.yaml", "a: 1\n");
        terminal.Write("two/neither.yaml", "a: 1\n");
        Assert.Contains("2 problems.", terminal.Run("knowledge", "check", "two").Refused().Out, StringComparison.Ordinal);
    }
}
