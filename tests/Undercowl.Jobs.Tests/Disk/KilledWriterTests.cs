using System.Collections.Concurrent;
using System.Diagnostics;

namespace Undercowl.Jobs.Tests.Disk;

/// <summary>
/// Five hundred times a process that records is killed at a random moment. Killing shows what the program's order of
/// writing and acknowledging is worth; what the disk's own cache forgets in a power cut it cannot show.
/// </summary>
public sealed class KilledWriterTests(ITestOutputHelper output)
{
    private const int Kills = 500;
    private const int Jobs = 10;

    [Fact]
    public void Five_hundred_kills_lose_no_acknowledged_entry_and_tear_at_most_one_line()
    {
        using var folder = new TemporaryFolder();
        var seed = Environment.TickCount;
        var counts = new ConcurrentBag<(int Acknowledged, int Torn, int Merging, int BeforeAnything)>();
        output.WriteLine($"seed {seed}");
        Parallel.For(0, Jobs, new ParallelOptions { MaxDegreeOfParallelism = 4 }, job => counts.Add(KillAndCheck(folder.File($"job-{job}.jsonl"), new Random(seed + job))));
        output.WriteLine($"{Kills} kills: {counts.Sum(c => c.Acknowledged)} acknowledged entries, {counts.Sum(c => c.Torn)} torn lines mended, "
            + $"{counts.Sum(c => c.Merging)} unfinished merges, {counts.Sum(c => c.BeforeAnything)} killed before the first acknowledgement");
        // The test would prove nothing if the kills came before the work or after it.
        Assert.True(counts.Sum(c => c.Acknowledged) >= Kills / 2);
        Assert.True(counts.Sum(c => c.BeforeAnything) < Kills / 2);
    }

    private static (int Acknowledged, int Torn, int Merging, int BeforeAnything) KillAndCheck(string path, Random random)
    {
        var acknowledged = new HashSet<EntryId>();
        var (total, torn, merging, before) = (0, 0, 0, 0);
        var usual = TimeSpan.FromMilliseconds(200);
        for (var kill = 0; kill < Kills / Jobs; kill++)
        {
            var watch = Stopwatch.StartNew();
            using var process = WriterProcess.Start("write", path, $"writer-{kill}");
            // One in five is killed at any time from its start on, so that opening and mending are hit as well; the others
            // once they work, and how long that took tells what "any time" is on this machine.
            var early = kill % 5 == 4;
            var first = early ? "" : process.ReadLine();
            usual = early ? usual : watch.Elapsed;
            Thread.Sleep(early ? usual * 1.3 * random.NextDouble() : TimeSpan.FromMilliseconds(random.Next(30)));
            process.Kill();
            string[] lines = string.IsNullOrEmpty(first) ? process.RestOfOutput() : [first, .. process.RestOfOutput()];
            var exit = process.WaitForExit();
            var ids = lines.Where(line => !line.StartsWith("mended ", StringComparison.Ordinal)).ToArray();
            total += ids.Length;
            before += ids.Length == 0 ? 1 : 0;
            merging += File.Exists(path + ".new") ? 1 : 0;
            foreach (var id in ids)
            {
                Assert.True(
                    EntryId.TryParse(id, out var entry),
                    $"{path}, kill {kill}, exit code {exit}: \"{id}\" is no id. All that was printed:{Environment.NewLine}{string.Join(Environment.NewLine, lines)}");
                acknowledged.Add(entry);
            }

            var tornBefore = File.Exists(path + ".torn") ? new FileInfo(path + ".torn").Length : 0;
            using var file = JobFile.Open(path);
            var lost = acknowledged.Where(id => !file.Job.Contains(id)).ToArray();
            Assert.True(lost.Length == 0, $"{path} lost {string.Join(", ", lost)} after kill {kill}");
            Assert.InRange(file.Mended.Count, 0, 1);
            torn += file.Mended.Count;
            Assert.Equal(file.Mended.Count > 0 && file.Mended[0].Mend.Contains(".torn", StringComparison.Ordinal), File.Exists(path + ".torn") && new FileInfo(path + ".torn").Length > tornBefore);
            Assert.Empty(file.Job.MissingParents);
            // Nothing is invented either: at most the one entry that was under way is there without having been acknowledged.
            Assert.InRange(file.Job.Count - acknowledged.Count, 0, 1);
            acknowledged.UnionWith(file.Job.Entries.Select(entry => entry.Id));
            StartAnewWhenLong(path, file, acknowledged);
        }

        return (total, torn, merging, before);
    }

    // Long logs would make the test slow, not harder: the writer reads all of it at each start.
    private static void StartAnewWhenLong(string path, JobFile file, HashSet<EntryId> acknowledged)
    {
        if (new FileInfo(path).Length < 600_000)
            return;
        file.Dispose();
        File.Delete(path);
        acknowledged.Clear();
    }
}
