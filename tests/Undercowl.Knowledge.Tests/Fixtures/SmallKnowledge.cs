using Undercowl.KnowledgeCompiler;

namespace Undercowl.Knowledge.Tests.Fixtures;

/// <summary>
/// A copy of the small, valid, invented knowledge in <c>Fixtures/small</c>, to be broken in one place and compiled. Every
/// file, and every way of combining and reading, is in it.
/// </summary>
internal sealed class SmallKnowledge : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("small-knowledge-");

    public SmallKnowledge()
    {
        var from = Repository.PathOf("tests/Undercowl.Knowledge.Tests/Fixtures/small");
        foreach (var path in Directory.EnumerateFiles(from, "*", SearchOption.AllDirectories))
        {
            Write(Path.GetRelativePath(from, path), System.IO.File.ReadAllText(path));
        }
    }

    public string Folder => _folder.FullName;

    public string At(string file) => Path.Combine(Folder, file);

    public string Read(string file) => System.IO.File.ReadAllText(At(file));

    public void Write(string file, string text)
    {
        Directory.CreateDirectory(Path.GetDirectoryName(At(file))!);
        System.IO.File.WriteAllText(At(file), text);
    }

    public void Remove(string file) => System.IO.File.Delete(At(file));

    /// <summary>Puts one text in the place of another that must be there exactly once.</summary>
    public void Change(string file, string old, string changed)
    {
        var text = Read(file);
        Assert.True(Occurrences(text, old) == 1, $"\"{old}\" must be in {file} once");
        Write(file, text.Replace(old, changed, StringComparison.Ordinal));
    }

    public CompileResult Compile(params string[] also) => KnowledgeFolder.Compile(Folder, also);

    /// <summary>
    /// Breaks the knowledge in one place and expects a problem in that file, on the line that holds <paramref name="line"/>,
    /// with these words, and no more than <paramref name="problems"/> in all.
    /// </summary>
    public static void Break(string file, string old, string changed, string line, string message, string mend, int problems = 1)
    {
        using var small = new SmallKnowledge();
        small.Change(file, old, changed);
        var found = small.Compile().Problems;
        var problem = Assert.Single(found, p => p.Message.Contains(message, StringComparison.Ordinal));
        Assert.Equal((small.At(file), small.LineOf(file, line)), (problem.File, problem.Line));
        Assert.Contains(mend, problem.Mend, StringComparison.Ordinal);
        Assert.Equal(problems, found.Count);
    }

    public int LineOf(string file, string text)
    {
        var lines = Read(file).Split('\n');
        var starting = lines.Index().Where(l => l.Item.TrimStart(' ', '-', '{').StartsWith(text, StringComparison.Ordinal)).ToArray();
        return starting.Length > 0 ? starting[0].Index + 1 : Assert.Single(lines.Index(), l => l.Item.Contains(text, StringComparison.Ordinal)).Index + 1;
    }

    public void Dispose() => _folder.Delete(recursive: true);

    private static int Occurrences(string text, string part) => text.Split(part).Length - 1;
}
