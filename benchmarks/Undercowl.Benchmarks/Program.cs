using BenchmarkDotNet.Columns;
using BenchmarkDotNet.Configs;
using BenchmarkDotNet.Exporters;
using BenchmarkDotNet.Jobs;
using BenchmarkDotNet.Running;
using BenchmarkDotNet.Toolchains.InProcess.Emit;
using Perfolizer.Horology;
using Undercowl.Benchmarks;
using Undercowl.Tests;

// In this process: a project made up for each benchmark would not know this repository's central package versions.
var config = DefaultConfig.Instance
    .AddJob(Job.Default
        .WithLaunchCount(1).WithWarmupCount(4).WithIterationCount(12).WithIterationTime(TimeInterval.FromMilliseconds(250))
        .WithToolchain(InProcessEmitToolchain.Instance))
    .AddColumn(StatisticColumn.Median)
    .HideColumns(Column.Job, Column.Toolchain, Column.IterationCount, Column.IterationTime, Column.LaunchCount, Column.WarmupCount, Column.Error)
    .AddExporter(MarkdownExporter.GitHub)
    .WithArtifactsPath(Repository.PathOf("artifacts/benchmarks"));
var summaries = BenchmarkSwitcher.FromAssembly(typeof(KnowledgeLoad).Assembly).Run(args, config);
return summaries.Any(s => s.HasCriticalValidationErrors || s.Reports.Any(r => !r.Success)) ? 1 : 0;
