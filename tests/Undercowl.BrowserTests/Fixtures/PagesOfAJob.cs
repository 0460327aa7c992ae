namespace Undercowl.BrowserTests.Fixtures;

/// <summary>Every page there is, with what shows that it is ready.</summary>
internal static class PagesOfAJob
{
    /// <summary>A name, the address under the job or from the root, and a heading.</summary>
    public static IReadOnlyList<(string Name, string Path, string Ready)> All { get; } =
    [
        ("jobs", "/", "text=Export all"),
        ("start", "/start", "text=Or by six questions"),
        ("job", "/job/{job}", "section.now[aria-busy=false]"),
        ("part", "/job/{job}/part/{part}", "text=Its remedies"),
        ("stand", "/job/{job}/stand", "text=Fault by fault"),
        ("engine", "/job/{job}/engine", "text=How it stands"),
        ("record", "/job/{job}/record", "text=In your own order"),
        ("phone", "/job/{job}/phone", "text=People first"),
        ("close", "/job/{job}/close", "text=The proof"),
        ("report", "/job/{job}/report", "text=What was done"),
    ];

    /// <summary>A demonstration job with some readings, and the address of each page for it.</summary>
    public static async Task<IReadOnlyList<(string Name, string Path, string Ready)>> Of(Visit visit, int steps = 4)
    {
        await visit.Go("/");
        await visit.Link("Try the demonstration job").ClickAsync();
        await visit.Settled();
        await new Technician(visit, touch: false).Work(most: steps);
        await visit.Settled();
        var (answer, _) = await visit.Answer();
        var part = Uri.EscapeDataString(answer.Engine.Blocks.MaxBy(b => b.Suspect)!.Part);
        return [.. All.Select(p => (p.Name, p.Path.Replace("{job}", visit.JobId, StringComparison.Ordinal).Replace("{part}", part, StringComparison.Ordinal), p.Ready))];
    }
}
