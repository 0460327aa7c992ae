using BenchmarkDotNet.Attributes;
using Undercowl.Diagnosis;
using Undercowl.Knowledge;

namespace Undercowl.Benchmarks;

/// <summary>What every command pays before it begins: the compiled knowledge read, checked by its hash and made a bench.</summary>
[MemoryDiagnoser]
public class KnowledgeLoad
{
    private byte[] _compiled = [];

    [GlobalSetup]
    public void Read() => _compiled = File.ReadAllBytes(Path.Combine(AppContext.BaseDirectory, "knowledge.json"));

    [Benchmark]
    public Workbench Load() => new(KnowledgeJson.Read(_compiled), KnowledgeHash.Of(_compiled));
}
