using Undercowl.Cli.Tests.Fixtures;

namespace Undercowl.Cli.Tests.Commands;

/// <summary>
/// Jobs made once and copied for each case: begun only; with a withheld crank and a swap; with findings
/// that disagree; with a remedy. And a knowledge folder with a mistake.
/// </summary>
public sealed class Templates : IDisposable
{
    private static readonly string[] Folders = ["good-knowledge", "bad-knowledge"];

    private readonly Terminal _made = new();

    public Templates()
    {
        _made.WithJob("visit.jsonl");
        _made.WithJob("other.jsonl");
        _made.WithJob("mixed.jsonl");
        _made.WithJob("odds.jsonl");
        _made.WithJob("repaired.jsonl");
        foreach (var line in (string[][])
            [
                ["record", "mixed.jsonl", "spark-to-ground", "--at", "cyl:1", "never"],
                ["record", "mixed.jsonl", "fuel-smell", "none"],
                ["tools", "mixed.jsonl", "--lack", "multimeter"],
                ["intake", "mixed.jsonl", "how-it-died", "at-once"],
                ["swap", "mixed.jsonl", "ignition-coil", "cyl:2", "cyl:3"],
                ["record", "mixed.jsonl", "spark-to-ground", "--at", "cyl:2", "always"],
                ["record", "mixed.jsonl", "spark-stop-wire-off", "--at", "cyl:1", "never"],
                ["record", "odds.jsonl", "fuel-smell", "none"],
                ["remedy", "repaired.jsonl", "replace-key-switch"],
                ["record", "odds.jsonl", "cranking-by-ear", "none"],
                ["record", "odds.jsonl", "cranking-rpm", "320rpm"],
                ["record", "odds.jsonl", "starting-test", "runs-well"],
            ])
        {
            _made.Run(line).Good();
        }

        File.Copy(_made.PathOf("visit.jsonl"), _made.PathOf("copy.jsonl"));
        _made.Run("note", "copy.jsonl", "from the other device").Good();
        Copy(Repository.PathOf("knowledge"), _made.PathOf("good-knowledge"));
        Copy(Repository.PathOf("knowledge"), _made.PathOf("bad-knowledge"));
        _made.Write("bad-knowledge/parts/tank-vent.yaml", _made.Read("bad-knowledge/parts/tank-vent.yaml").Replace("prior: 0", "prior: seldom", StringComparison.Ordinal));
    }

    /// <summary>A fresh folder with copies of the jobs; the knowledge folders are only read, and linked.</summary>
    internal Terminal Fresh()
    {
        var fresh = new Terminal();
        foreach (var job in Directory.EnumerateFiles(_made.Folder, "*.jsonl"))
        {
            File.Copy(job, fresh.PathOf(Path.GetFileName(job)));
        }

        foreach (var folder in Folders)
        {
            Directory.CreateSymbolicLink(fresh.PathOf(folder), _made.PathOf(folder));
        }

        return fresh;
    }

    public void Dispose() => _made.Dispose();

    private static void Copy(string from, string to)
    {
        foreach (var path in Directory.EnumerateFiles(from, "*", SearchOption.AllDirectories))
        {
            var target = Path.Combine(to, Path.GetRelativePath(from, path));
            Directory.CreateDirectory(Path.GetDirectoryName(target)!);
            File.Copy(path, target);
        }
    }
}
