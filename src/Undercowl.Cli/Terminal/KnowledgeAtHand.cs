using System.Text.Json;
using Undercowl.Diagnosis;
using Undercowl.Knowledge;

namespace Undercowl.Cli;

/// <summary>The compiled knowledge that lies beside the program, or that <c>UNDERCOWL_KNOWLEDGE</c> names, and the bench made of it.</summary>
internal sealed class KnowledgeAtHand
{
    private KnowledgeAtHand(KnowledgeBase known, Workbench bench) => (Known, Bench) = (known, bench);

    public KnowledgeBase Known { get; }

    public Workbench Bench { get; }

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
            return new KnowledgeAtHand(known, new Workbench(known, KnowledgeHash.Of(bytes)));
        }
        catch (JsonException error)
        {
            throw new Refusal($"{path}, line {(error.LineNumber ?? 0) + 1}: {error.Message}", "Build the program again from knowledge/.");
        }
    }
}
