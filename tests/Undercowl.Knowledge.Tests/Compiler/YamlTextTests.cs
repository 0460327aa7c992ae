using CsCheck;
using Undercowl.KnowledgeCompiler.Yaml;

namespace Undercowl.Knowledge.Tests.Compiler;

public sealed class YamlTextTests
{
    private static readonly string[] Texts =
        [.. Directory.EnumerateFiles(Repository.PathOf("tests/Undercowl.Knowledge.Tests/Fixtures/small"), "*.yaml", SearchOption.AllDirectories).Order(StringComparer.Ordinal).Select(File.ReadAllText)];

    [Fact]
    public void However_a_file_is_spoilt_it_gives_a_tree_or_a_problem_on_one_of_its_lines() =>
        Gen.Select(Gen.Int[0, Texts.Length - 1], Gen.Double[0, 1], Gen.Int[0, 3], Gen.String[Gen.Char["[]{}:-&*!|>'\"#%@`\t\n,? a1"], 0, 3]).Sample(
            (file, place, taken, put) =>
            {
                var at = (int)(place * (Texts[file].Length - 1));
                var spoilt = Texts[file].Remove(at, Math.Min(taken, Texts[file].Length - at)).Insert(at, put);
                var read = YamlText.Parse("x.yaml", spoilt);
                return (read.Root is not null || read.Problems.Count > 0) && read.Problems.All(p => p.Line >= 1 && p.Line <= spoilt.TrimEnd('\n').Split('\n').Length);
            },
            seed: "0000KOIPe647",
            iter: 20_000);

    [Fact]
    public void Every_member_and_entry_knows_its_line()
    {
        var read = YamlText.Parse("x.yaml", "a: 1\nb:\n  - c: 2\n    d/e: 3\n  - [f,\n     g]\n");
        Assert.Equal(
            ["=1", "/a=1", "/b=2", "/b/0=3", "/b/0/c=3", "/b/0/d~1e=4", "/b/1=5", "/b/1/0=5", "/b/1/1=6"],
            read.Lines.Select(l => $"{l.Key}={l.Value}"));
        Assert.Equal(4, read.LineOf("/b/0/d~1e/not/there"));
    }
}
