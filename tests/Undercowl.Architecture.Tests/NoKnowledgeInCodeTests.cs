using System.Text.RegularExpressions;
using Xunit;

namespace Undercowl.Architecture.Tests;

/// <summary>Knowledge is data: no id of <c>knowledge/</c> stands in a text of the source.</summary>
public sealed partial class NoKnowledgeInCodeTests
{
    /// <summary>
    /// Words of the formats themselves, each of which stands in a text of the source: the place of the whole engine, members of
    /// records and parameters, units, endings of a job, the answers that the gap model of a check must have, and what a reading
    /// may say in an answer document.
    /// </summary>
    private static readonly HashSet<string> FormatWords =
    [
        "engine", "opening",
        "action", "clear", "gap", "good", "heat", "high", "known-good", "level", "low", "output", "setting", "signal", "state",
        "in",
        "open", "proven",
        "none", "never", "sometimes", "always",
        "bad",
    ];

    [Fact]
    public void Every_exempt_word_is_needed()
    {
        var texts = Sources().SelectMany(f => Text().Matches(File.ReadAllText(f)).Select(m => m.Groups[1].Value)).ToHashSet();
        var ids = Ids().ToHashSet();
        Assert.All(FormatWords, w => Assert.True(ids.Contains(w) && texts.Any(t => t == w || (w.Contains('-', StringComparison.Ordinal) && t.Contains(w, StringComparison.Ordinal))), w));
    }

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
                    // In markup and scripts a plain word on its own is a class or a name of theirs.
                    if (ids.Contains(word) && (word.Contains('-', StringComparison.Ordinal) || (match.Groups[1].Value == word && file.EndsWith(".cs", StringComparison.Ordinal))))
                    {
                        found.Add($"{Path.GetRelativePath(Repository.Root, file)}: \"{match.Groups[1].Value}\" holds {word}");
                    }
                }
            }
        }

        Assert.Empty(found);
    }

    private static IEnumerable<string> Sources() =>
        ((string[])["*.cs", "*.razor", "*.js"]).SelectMany(form => Directory.EnumerateFiles(Path.Combine(Repository.Root, "src"), form, SearchOption.AllDirectories))
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
