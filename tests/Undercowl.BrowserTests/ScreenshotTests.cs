using Undercowl.BrowserTests.Fixtures;

namespace Undercowl.BrowserTests;

/// <summary>The pictures in docs/screens: each page at phone and desktop width. Written anew where UNDERCOWL_WRITE_PAGES is set; see docs/screens/README.md.</summary>
[Collection(OneApp.Name)]
public sealed class ScreenshotTests(App app)
{
    private static readonly (string Name, int Width, int Height)[] Sizes = [("phone", 390, 844), ("desktop", 1280, 800)];

    [Fact]
    public async Task Every_page_has_its_pictures()
    {
        var folder = Repository.PathOf("docs/screens");
        if (Environment.GetEnvironmentVariable("UNDERCOWL_WRITE_PAGES") is { Length: > 0 })
        {
            foreach (var (size, width, height) in Sizes)
            {
                await using var visit = await app.Visit(new() { ViewportSize = new() { Width = width, Height = height } });
                foreach (var (name, path, ready) in await PagesOfAJob.Of(visit, steps: 5))
                {
                    await visit.Go(path);
                    await visit.Page.Locator(ready).First.WaitForAsync();
                    await visit.Page.ScreenshotAsync(new() { Path = Path.Combine(folder, $"{name}-{size}.png"), FullPage = name is "job" or "report" or "stand" or "part", Animations = Microsoft.Playwright.ScreenshotAnimations.Disabled });
                }
            }
        }

        Assert.All(PagesOfAJob.All.SelectMany(p => Sizes.Select(s => Path.Combine(folder, $"{p.Name}-{s.Name}.png"))), f => Assert.True(File.Exists(f), f));
    }
}
