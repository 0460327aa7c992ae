using System.Globalization;

namespace Undercowl.Cli.Tests.Fixtures;

/// <summary>
/// The program called within the tests' process, with a clock that goes a minute a command and chance from a seed, so that
/// the same commands write the same bytes. Its files lie in a folder of its own but are named without it.
/// </summary>
internal sealed class Desk : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("undercowl-desk-");
    private readonly Random _random = new(1);
    private readonly Ticking _clock = new();

    public string PathOf(string file) => Path.Combine(_folder.FullName, file);

    /// <summary>Runs a command line without quotes, such as <c>undercowl next visit.jsonl</c>, or <c>tail -n 1 visit.jsonl</c>.</summary>
    public Ran Run(string line)
    {
        var words = line.Split(' ');
        if (words is ["tail", "-n", "1", var file])
        {
            return new Ran(0, File.ReadLines(PathOf(file)).Last() + "\n", "");
        }

        _clock.Tick();
        using var output = new StringWriter();
        using var error = new StringWriter();
        using var input = new StringReader("");
        var shell = new Shell
        {
            In = input,
            Out = output,
            Error = error,
            Variable = name => name == "UNDERCOWL_DEVICE" ? "dock" : null,
            Clock = _clock,
            Random = _random.NextBytes,
        };
        var code = Application.Run([.. words.Skip(1).Select(w => Path.GetExtension(w) is ".jsonl" or ".xml" ? PathOf(w) : w)], shell);
        return new Ran(code, Named(output), Named(error));
    }

    public void Dispose() => _folder.Delete(recursive: true);

    private string Named(StringWriter text) => text.ToString().Replace(_folder.FullName + Path.DirectorySeparatorChar, "", StringComparison.Ordinal);

    private sealed class Ticking : TimeProvider
    {
        private DateTimeOffset _now = DateTimeOffset.Parse("2026-05-04T09:00:00Z", CultureInfo.InvariantCulture);

        public void Tick() => _now = _now.AddMinutes(1);

        public override DateTimeOffset GetUtcNow() => _now;
    }
}
