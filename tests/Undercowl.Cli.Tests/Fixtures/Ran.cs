using System.Text.Json;
using Xunit;

namespace Undercowl.Cli.Tests.Fixtures;

/// <summary>What a process came to: its exit code and what it wrote to both streams.</summary>
internal sealed record Ran(int Code, string Out, string Error)
{
    /// <summary>The same, after it is seen to have ended well.</summary>
    public Ran Good()
    {
        Assert.True(Code == 0, $"exit code {Code}: {Error}{Out}");
        return this;
    }

    /// <summary>The one line of JSON on standard output, after the process is seen to have ended well.</summary>
    public JsonElement Json()
    {
        Good();
        Assert.Equal(1, Out.Count(c => c == '\n'));
        using var document = JsonDocument.Parse(Out);
        return document.RootElement.Clone();
    }

    /// <summary>One document a line.</summary>
    public JsonElement[] JsonLines() => [.. Out.Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(line =>
    {
        using var document = JsonDocument.Parse(line);
        return document.RootElement.Clone();
    })];

    /// <summary>Refused: exit code 1, nothing or a document on standard output, and each of these words on the error stream.</summary>
    public Ran Refused(params string[] words)
    {
        Assert.Equal(1, Code);
        foreach (var word in words)
        {
            Assert.Contains(word, Error, StringComparison.Ordinal);
        }

        return this;
    }
}
