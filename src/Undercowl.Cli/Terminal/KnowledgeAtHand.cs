using System.Text.Json;
using Undercowl.Diagnosis;
using Undercowl.Knowledge;

namespace Undercowl.Cli;

/// <summary>The compiled knowledge that lies beside the program, or that <c>UNDERCOWL_KNOWLEDGE</c> names, and the bench made of it.</summary>
internal sealed class KnowledgeAtHand
{
    private readonly string _path;

    private KnowledgeAtHand(string path, KnowledgeBase known, Workbench bench) => (_path, Known, Bench) = (path, known, bench);

    public KnowledgeBase Known { get; }

    public Workbench Bench { get; }

    /// <summary>On which line of which file each number stands, by its address; empty where the list does not lie beside the knowledge.</summary>
    public IReadOnlyDictionary<string, string> Lines
    {
        get
        {
            var path = Path.ChangeExtension(_path, ".lines");
            return field ??= File.Exists(path) ? File.ReadLines(path).Select(l => l.Split('\t')).ToDictionary(l => l[0], l => l[1]) : new Dictionary<string, string>();
        }
    }

    public static KnowledgeAtHand Of(Shell shell)
    {
        var path = shell.Variable("UNDERCOWL_KNOWLEDGE") is { Length: > 0 } named ? named : Path.Combine(shell.Folder, "knowledge.json");
        if (!File.Exists(path))
        {
            throw new Refusal($"The compiled knowledge {path} is not there.", "Build the program again, or name a compiled knowledge file in UNDERCOWL_KNOWLEDGE.");
        }

        var bytes = File.ReadAllBytes(path);
        try
        {
            var known = KnowledgeJson.Read(bytes);
            return new KnowledgeAtHand(path, known, new Workbench(known, KnowledgeHash.Of(bytes)));
        }
        catch (JsonException error)
        {
            throw new Refusal($"{path}, line {(error.LineNumber ?? 0) + 1}: {error.Message}", "Build the program again from knowledge/.");
        }
    }
}
