using System.Globalization;
using Undercowl.Jobs;
using Xunit;

namespace Undercowl.Cli.Tests.Docs;

/// <summary>The program in this process, with a clock that ticks a minute at each look and ids from a fixed seed, so that its bytes are always the same.</summary>
internal sealed class InProcess : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("undercowl-page-");
    private readonly Ticking _clock = new();
    private readonly Random _random = new(7);
    private KnowledgeAtHand? _knowledge;

    public string PathOf(string file) => Path.Combine(_folder.FullName, file);

    public KnowledgeAtHand Knowledge => _knowledge ??= KnowledgeAtHand.Of(Shell(TextWriter.Null));

    public Job Job(string file) => JobFile.Read(PathOf(file)).Whole();

    /// <summary>Runs a line as it is typed, <c>undercowl</c> first, blanks between words; gives what it printed.</summary>
    public string Type(string line)
    {
        string[] words = [.. line.Split(' ').Select(w => w.EndsWith(".jsonl", StringComparison.Ordinal) ? PathOf(w) : w)];
        Assert.Equal("undercowl", words[0]);
        using var output = new StringWriter(CultureInfo.InvariantCulture);
        Assert.Equal(0, Application.Run(words[1..], Shell(output)));
        return output.ToString();
    }

    public void Dispose() => _folder.Delete(recursive: true);

    private Shell Shell(TextWriter output) => new()
    {
        In = TextReader.Null,
        Out = output,
        Error = output,
        Variable = name => name == "UNDERCOWL_DEVICE" ? "dock" : null,
        Clock = _clock,
        Random = _random.NextBytes,
    };

    private sealed class Ticking : TimeProvider
    {
        private DateTimeOffset _now = DateTimeOffset.Parse("2026-05-01T08:00:00Z", CultureInfo.InvariantCulture);

        public override DateTimeOffset GetUtcNow() => _now = _now.AddMinutes(1);
    }
}
