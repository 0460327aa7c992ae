using Microsoft.Playwright;

namespace Undercowl.BrowserTests.Fixtures;

/// <summary>The system's Chromium, without a window.</summary>
internal static class Browser
{
    private static readonly string[] Quiet =
        ["--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync"];

    private static readonly string[] Known = ["/usr/bin/chromium", "/usr/bin/chromium-browser", "/usr/bin/google-chrome"];

    public static BrowserTypeLaunchOptions Options { get; } = new() { ExecutablePath = Path, Args = Quiet };

    /// <summary>A phone held upright.</summary>
    public static BrowserNewContextOptions Phone { get; } = new() { ViewportSize = new ViewportSize { Width = 390, Height = 844 }, HasTouch = true, IsMobile = true };

    private static string Path => Known.FirstOrDefault(File.Exists)
        ?? throw new FileNotFoundException("There is no Chromium. ./test installs it where it may; else install the package chromium.");

    public static BrowserTypeLaunchPersistentContextOptions Persistent { get; } = new()
    {
        ExecutablePath = Path,
        Args = Quiet,
        ViewportSize = new ViewportSize { Width = 390, Height = 844 },
    };
}
