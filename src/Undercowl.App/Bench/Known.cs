using Undercowl.Diagnosis;
using Undercowl.Knowledge;

namespace Undercowl.App.Bench;

/// <summary>The knowledge that the program carries, and the bench made of it; read when first asked for.</summary>
internal static class Known
{
    public static Workbench Bench => field ??= Read();

    /// <summary>Changes whenever program or knowledge do, which is in this assembly: what was worked out by another is worked out again.</summary>
    public static string Edition { get; } = $"{typeof(Known).Module.ModuleVersionId:N} {Workbench.Edition}";

    private static Workbench Read()
    {
        var bytes = Resource("knowledge.json");
        return new Workbench(KnowledgeJson.Read(bytes), KnowledgeHash.Of(bytes));
    }

    public static byte[] Resource(string name)
    {
        using var stream = typeof(Known).Assembly.GetManifestResourceStream(name) ?? throw new InvalidOperationException($"{name} was not built into the program.");
        var bytes = new byte[stream.Length];
        stream.ReadExactly(bytes);
        return bytes;
    }
}
