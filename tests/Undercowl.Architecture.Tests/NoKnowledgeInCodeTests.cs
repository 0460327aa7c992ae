using System.Text.RegularExpressions;
using Xunit;

namespace Undercowl.Architecture.Tests;

/// <summary>Knowledge is data: no id of <c>knowledge/</c> stands in a text of the source.</summary>
public sealed partial class NoKnowledgeInCodeTests
{
    /// <summary>
    /// Words of the formats themselves: places, heat and endings of the job log, member names of the knowledge's records,
    /// and words of ordinary English that happen to be an id as well as a member name.
    /// </summary>
    private static readonly HashSet<string> FormatWords =
    [
        "engine", "cyl", "pair", "bank", "group", "side", "sound", "cold", "warm", "hot",
        "tank", "none", "weak", "good", "open", "wear", "start", "timing", "gap", "power",
        "state", "action", "output", "heat", "clear", "low", "high", "level", "setting", "proven", "bad", "opening", "in",
        "signal", "order", "known-good", "never", "sometimes", "always",
    ];

    [Fact]
    public void No_id_of_the_knowledge_stands_in_a_text_of_the_source()
    {
        var ids = Ids().Except(FormatWords).ToHashSet();
        Assert.True(ids.Count > 300, $"only {ids.Count} ids were found: is the knowledge where it was?");
        var found = new List<string>();
        foreach (var file in Sources())
        {
            foreach (Match match in Text().Matches(File.ReadAllText(file)))
            {
                foreach (var word in match.Groups[1].Value.Split([' ', ',', '.', ':', '=', '@', '/', '"', '\\', '{', '}', '(', ')'], StringSplitOptions.RemoveEmptyEntries))
                {
                    // A single plain word in a sentence is English; an id on its own, or with a hyphen, is not.
                    if (ids.Contains(word) && (word.Contains('-', StringComparison.Ordinal) || match.Groups[1].Value == word))
                    {
                        found.Add($"{Path.GetRelativePath(Repository.Root, file)}: \"{match.Groups[1].Value}\" holds {word}");
                    }
                }
            }
        }

        Assert.Empty(found);
    }

    private static IEnumerable<string> Sources() =>
        Directory.EnumerateFiles(Path.Combine(Repository.Root, "src"), "*.cs", SearchOption.AllDirectories)
            .Where(f => !f.Split(Path.DirectorySeparatorChar).Any(p => p is "obj" or "bin"));

    /// <summary>Every <c>id:</c> in the knowledge's files.</summary>
    private static IEnumerable<string> Ids() =>
        Directory.EnumerateFiles(Path.Combine(Repository.Root, "knowledge"), "*.yaml", SearchOption.AllDirectories)
            .SelectMany(File.ReadLines)
            .SelectMany(line => Id().Matches(line).Select(m => m.Groups[1].Value));

    [GeneratedRegex("\"((?:[^\"\\\\\n]|\\\\.)*)\"")]
    private static partial Regex Text();

    [GeneratedRegex(@"(?:^|[\s{,-])id:\s*([a-z][a-z0-9-]*)")]
    private static partial Regex Id();
}
