using BenchmarkDotNet.Attributes;
using Undercowl.Cli;
using Undercowl.Diagnosis;
using Undercowl.Diagnosis.Answers;
using Undercowl.Jobs;
using Undercowl.Knowledge;

namespace Undercowl.Benchmarks;

/// <summary>The job of the demonstration as it was after its first entries, and whole: the log diagnosed and asked once.</summary>
[MemoryDiagnoser]
public class DemoJob
{
    private const int Top = 3;

    private Workbench? _bench;
    private Job _job = Job.Empty;

    /// <summary>How many of the job's entries, 5 and 15 or <c>all</c>.</summary>
    [Params("5", "15", "all")]
    public string Entries { get; set; } = "all";

    [GlobalSetup]
    public void Work()
    {
        var compiled = File.ReadAllBytes(Path.Combine(AppContext.BaseDirectory, "knowledge.json"));
        _bench = new Workbench(KnowledgeJson.Read(compiled), KnowledgeHash.Of(compiled));
        var folder = Directory.CreateTempSubdirectory("undercowl-benchmark-");
        try
        {
            var path = Path.Combine(folder.FullName, "demo.jsonl");
            var shell = new Shell { In = TextReader.Null, Out = TextWriter.Null, Error = TextWriter.Null, Variable = _ => null };
            if (Application.Run(["demo", "--keep", path], shell) != ExitCode.Good)
            {
                throw new InvalidOperationException("The demonstration did not come to its end.");
            }

            var whole = JobFile.Read(path).Job;
            _job = Entries == "all" ? whole : Job.Of(whole.Entries.Take(int.Parse(Entries, System.Globalization.CultureInfo.InvariantCulture)));
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    [Benchmark]
    public BeliefAnswer Belief() => _bench!.Open(_job).BeliefNow();

    [Benchmark]
    public NextAnswer Next() => _bench!.Open(_job).Next(Top);
}
