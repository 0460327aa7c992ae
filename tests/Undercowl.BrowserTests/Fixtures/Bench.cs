using Undercowl.Diagnosis;
using Undercowl.Knowledge;

namespace Undercowl.BrowserTests.Fixtures;

/// <summary>The same knowledge outside the browser, to compare with.</summary>
internal static class Bench
{
    public static Workbench Native { get; } = Read();

    private static Workbench Read()
    {
        var bytes = File.ReadAllBytes(Path.Combine(AppContext.BaseDirectory, "knowledge.json"));
        return new Workbench(KnowledgeJson.Read(bytes), KnowledgeHash.Of(bytes));
    }
}
