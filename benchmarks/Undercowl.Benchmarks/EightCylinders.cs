using BenchmarkDotNet.Attributes;
using Undercowl.Diagnosis;
using Undercowl.Diagnosis.Answers;
using Undercowl.Jobs;
using Undercowl.KnowledgeCompiler;
using Undercowl.Tests;

namespace Undercowl.Benchmarks;

/// <summary>The largest layout there is, that of the tests: eight cylinders, one of them without spark by a few findings.</summary>
[MemoryDiagnoser]
public class EightCylinders
{
    private const int Top = 3;

    private Workbench? _bench;
    private Job _job = Job.Empty;

    [GlobalSetup]
    public void Record()
    {
        var compiled = KnowledgeFolder.Compile(Repository.PathOf("knowledge"), Repository.PathOf("tests/layouts"));
        _bench = new Workbench(compiled.Knowledge!, "sha256:" + new string('0', 64));
        var writer = new EntryWriter("bench", TimeProvider.System, new Random(1).NextBytes);
        _job = _job.With(writer.Next(_job, _bench.Opening("four-stroke-8-inductive", "misses")));
        Find("fuel-smell", "none", null);
        for (var cylinder = 1; cylinder <= 8; cylinder++)
        {
            Find("spark-to-ground", cylinder == 3 ? "never" : "always", $"cyl:{cylinder}");
        }

        void Find(string check, string reading, string? at)
        {
            foreach (var body in Drafting.Finding(_bench.Open(_job), new SaidFinding(check, reading, at)).Bodies)
            {
                _job = _job.With(writer.Next(_job, body is Finding { Occasion: "" } finding ? finding with { Occasion = _job.Entries[^1].Id.ToString() } : body));
            }
        }
    }

    [Benchmark]
    public BeliefAnswer Belief() => _bench!.Open(_job).BeliefNow();

    [Benchmark]
    public NextAnswer Next() => _bench!.Open(_job).Next(Top);
}
