using System.Text.Json;
using Undercowl.Knowledge;
using Undercowl.Knowledge.Checking;
using Undercowl.KnowledgeCompiler.Yaml;

namespace Undercowl.KnowledgeCompiler;

/// <summary>Compiles folders of YAML to checked knowledge.</summary>
public static class KnowledgeFolder
{
    private const string SchemaFolder = "schema";

    /// <summary>Reads and checks all files.</summary>
    /// <param name="folder">The folder <c>knowledge/</c>.</param>
    /// <param name="also">Further folders laid out like it, whose records are added, such as layouts that only tests use.</param>
    public static CompileResult Compile(string folder, params IReadOnlyList<string> also)
    {
        var tree = new KnowledgeTree(folder);
        foreach (var each in (IEnumerable<string>)[folder, .. also])
        {
            if (Directory.Exists(each))
            {
                Gather(tree, each);
            }
            else
            {
                tree.Report(new KnowledgeProblem(each, 1, "there is no such folder", "name the folder that holds the knowledge files"));
            }
        }

        if (tree.Problems.Count == 0 && FileKind.All.All(k => tree.Count(k) == 0))
        {
            tree.Report(new KnowledgeProblem(folder, 1, "there are no knowledge files in this folder", "name the folder that holds layouts/, parts/, checks/ and the rest"));
        }

        var knowledge = tree.Root.Deserialize(KnowledgeJson.Default.KnowledgeBase)!;
        var faults = KnowledgeCheck.Faults(knowledge, tree.Unreadable).ToLookup(f => f.NoteOnly, tree.Located);
        KnowledgeProblem[] problems = [.. InOrder(tree.Problems.Concat(faults[false]))];
        return new CompileResult(
            problems.Length == 0 ? knowledge : null,
            problems,
            [.. InOrder(faults[true])],
            FileKind.All.ToDictionary(k => k.Name, tree.Count),
            problems.Length == 0 ? tree.Lines() : new Dictionary<string, string>());
    }

    private static IEnumerable<KnowledgeProblem> InOrder(IEnumerable<KnowledgeProblem> problems) =>
        problems.Distinct().OrderBy(p => p.File, StringComparer.Ordinal).ThenBy(p => p.Line).ThenBy(p => p.Message, StringComparer.Ordinal);

    private static void Gather(KnowledgeTree tree, string folder)
    {
        foreach (var path in Sorted(Directory.EnumerateFiles(folder)))
        {
            if (IsKnowledge(tree, path))
            {
                var name = Path.GetFileNameWithoutExtension(path);
                var kind = FileKind.All.FirstOrDefault(k => k.Sort != FileSort.Folder && k.Name == name);
                Add(tree, kind, path, FileKind.All.Where(k => k.Sort != FileSort.Folder));
            }
        }

        foreach (var directory in Sorted(Directory.EnumerateDirectories(folder)))
        {
            var name = Path.GetFileName(directory);
            var kind = FileKind.All.FirstOrDefault(k => k.Sort == FileSort.Folder && k.Name == name);
            if (name == SchemaFolder)
            {
                continue;
            }

            foreach (var path in Sorted(Directory.EnumerateFiles(directory, "*", SearchOption.AllDirectories)).Where(p => IsKnowledge(tree, p)))
            {
                Add(tree, kind, path, FileKind.All.Where(k => k.Sort == FileSort.Folder));
            }
        }
    }

    private static void Add(KnowledgeTree tree, FileKind? kind, string path, IEnumerable<FileKind> there)
    {
        var shown = path.Replace('\\', '/');
        if (kind is not null)
        {
            tree.Add(kind, YamlText.Parse(shown, File.ReadAllText(path)), Path.GetFileNameWithoutExtension(path));
            return;
        }

        var parent = there.First().Sort == FileSort.Folder;
        var name = parent ? Path.GetFileName(Path.GetDirectoryName(path))! : Path.GetFileNameWithoutExtension(path);
        tree.Report(new KnowledgeProblem(
            shown, 1, parent ? $"there are no knowledge files in a folder {name}" : $"there is no knowledge file {name}.yaml here", NearNames.Mend(name, there.Select(k => k.Name))));
    }

    private static bool IsKnowledge(KnowledgeTree tree, string path)
    {
        if (Path.GetExtension(path) == ".yml")
        {
            tree.Report(new KnowledgeProblem(path.Replace('\\', '/'), 1, "the file name ends in .yml", "name it .yaml"));
        }

        return Path.GetExtension(path) == ".yaml";
    }

    private static IEnumerable<string> Sorted(IEnumerable<string> paths) => paths.Order(StringComparer.Ordinal);
}
