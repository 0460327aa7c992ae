using Deque.AxeCore.Playwright;
using Undercowl.BrowserTests.Fixtures;

namespace Undercowl.BrowserTests;

/// <summary>Held to the axe rules, to WCAG 2.2's reflow, and to sizes for wet thumbs.</summary>
[Collection(OneApp.Name)]
public sealed class AccessibilityTests(App app)
{
    private static readonly string[] Themes = ["light", "sun", "dark"];

    [Fact]
    public async Task Axe_finds_nothing_on_any_page_in_any_theme()
    {
        await using var visit = await app.Visit();
        var found = new List<string>();
        foreach (var (name, path, ready) in await PagesOfAJob.Of(visit))
        {
            await visit.Go(path);
            await visit.Page.Locator(ready).First.WaitForAsync();
            // What is folded away is looked at too.
            await visit.Page.EvaluateAsync("document.querySelectorAll('details').forEach(d => d.open = true)");
            foreach (var theme in Themes)
            {
                await visit.Page.EvaluateAsync("t => document.documentElement.dataset.theme = t", theme);
                var result = await visit.Page.RunAxe();
                Assert.True(result.Passes.Length > 5);
                found.AddRange(result.Violations.Select(v => $"{name}, {theme}: {v.Id}: {v.Help}: {string.Join(" | ", v.Nodes.Take(3).Select(n => n.Html))}"));
            }
        }

        Assert.Empty(found);
    }

    /// <summary>200 % zoom of a phone 390 px wide is a page 195 px wide; WCAG asks for 320 px, which is 400 % of 1280.</summary>
    [Theory]
    [InlineData(320, 1)]
    [InlineData(390, 2)]
    [InlineData(1280, 2)]
    public async Task No_page_scrolls_sideways(int width, int zoom)
    {
        await using var visit = await app.Visit(new() { ViewportSize = new() { Width = width / zoom, Height = 700 }, DeviceScaleFactor = zoom });
        var wide = new List<string>();
        foreach (var (name, path, ready) in await PagesOfAJob.Of(visit))
        {
            await visit.Go(path);
            await visit.Page.Locator(ready).First.WaitForAsync();
            var over = await visit.Page.EvaluateAsync<int>("document.documentElement.scrollWidth - document.documentElement.clientWidth");
            if (over > 0)
            {
                var what = await visit.Page.EvaluateAsync<string>("[...document.querySelectorAll('main *')].filter(e => e.getBoundingClientRect().right > document.documentElement.clientWidth + 1 && !e.closest('.drawing')).slice(0, 3).map(e => e.outerHTML.slice(0, 80)).join(' | ')");
                wide.Add($"{name}: {over} px: {what}");
            }
        }

        Assert.Empty(wide);
    }

    /// <summary>Primary targets 72 px with 8 px gaps, others 48 px; a link in a sentence is as tall as its line.</summary>
    [Fact]
    public async Task Targets_are_big_enough_for_wet_thumbs()
    {
        await using var visit = await app.Visit();
        var small = new List<string>();
        foreach (var (name, path, ready) in await PagesOfAJob.Of(visit))
        {
            await visit.Go(path);
            await visit.Page.Locator(ready).First.WaitForAsync();
            await visit.Page.EvaluateAsync("document.querySelectorAll('details').forEach(d => d.open = true)");
            var found = await visit.Page.EvaluateAsync<string[]>("""
                () => {
                  const bad = [];
                  for (const e of document.querySelectorAll('button, a, select, input, textarea, summary')) {
                    const box = (e.matches('[type=checkbox], [type=radio]') ? e.closest('label') : e).getBoundingClientRect();
                    if (box.width === 0 || e.closest('.skip, .hidden') || (e.matches('a') && e.closest('p, .foot, li:not(.list li)') && !e.matches('.button, .item'))) continue;
                    const least = e.matches('.choice') ? 72 : 48;
                    if (box.height < least - 0.5 || box.width < 47.5) bad.push(`${Math.round(box.width)}x${Math.round(box.height)} ${e.outerHTML.slice(0, 90)}`);
                  }
                  return bad;
                }
                """);
            small.AddRange(found.Select(f => $"{name}: {f}"));
        }

        Assert.Empty(small);
    }

    [Fact]
    public async Task The_rows_beneath_the_drawing_say_what_it_shows()
    {
        await using var visit = await app.Visit();
        await PagesOfAJob.Of(visit);
        var drawn = await visit.Page.EvaluateAsync<string[]>("[...document.querySelectorAll('.band .much')].map(e => e.textContent.trim())");
        var said = await visit.Page.EvaluateAsync<string[]>("[...document.querySelectorAll('.part-rows .much')].map(e => e.firstChild.textContent.trim())");
        Assert.NotEmpty(drawn);
        Assert.Empty(drawn.Except(said));
        Assert.Equal("true", await visit.Page.Locator(".drawing svg").First.GetAttributeAsync("aria-hidden"));
    }
}
