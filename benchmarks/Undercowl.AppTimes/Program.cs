using System.Globalization;
using Microsoft.Playwright;
using Undercowl.AppTimes;

// What a person at the app waits for, in a real browser. See benchmarks/app-times.
const int Findings = 15;
const int Loads = 5;
var (ours, stock) = (args[0], args[1]);
using var playwright = await Playwright.CreateAsync();
await using var browser = await playwright.Chromium.LaunchAsync(new()
{
    ExecutablePath = "/usr/bin/chromium",
    Args = ["--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync"],
});
using var app = new Host(Path.Combine(ours, "Undercowl.Server.dll"));
using var template = new Host(Path.Combine(stock, "Stock.dll"));
Say("a finding recorded, to belief and next step shown", await Recorded());
var first = new List<(double Ours, double Stock)>();
var again = new List<(double Ours, double Stock)>();
for (var i = 0; i < Loads; i++)
{
    // In turns, so that what else the machine does falls on both.
    var (ourFirst, ourAgain) = await Visible(app.Address + "/demo", "#step");
    var (stockFirst, stockAgain) = await Visible(template.Address + "/", "h1");
    first.Add((ourFirst, stockFirst));
    again.Add((ourAgain, stockAgain));
}

Compare("next step of the demonstration visible, first visit", first);
Compare("the same, second visit", again);
Console.WriteLine($"{"download, brotli, bytes",-58} {Directory.EnumerateFiles(Path.Combine(ours, "wwwroot"), "*.br", SearchOption.AllDirectories).Sum(f => new FileInfo(f).Length).ToString(CultureInfo.InvariantCulture),9}");

async Task<double[]> Recorded()
{
    await using var context = await browser.NewContextAsync(new() { ViewportSize = new() { Width = 390, Height = 844 } });
    context.SetDefaultTimeout(120_000);
    var page = await context.NewPageAsync();
    await page.GotoAsync(app.Address + "/demo");
    await page.Locator("#step").WaitForAsync();
    await page.EvaluateAsync("""
        () => {
          window.times = [];
          let tapped = 0;
          document.addEventListener('click', () => { tapped = performance.now(); }, true);
          new MutationObserver(changes => {
            for (const c of changes) {
              if (c.target.matches('section.now') && c.oldValue === 'true' && c.target.getAttribute('aria-busy') === 'false') {
                requestAnimationFrame(() => window.times.push(performance.now() - tapped));
              }
            }
          }).observe(document.body, { subtree: true, attributes: true, attributeFilter: ['aria-busy'], attributeOldValue: true });
        }
        """);
    for (var n = 1; n <= Findings; n++)
    {
        await page.Locator("section.now[aria-busy=false]").WaitForAsync();
        if (await page.GetByText("Read and understood").CountAsync() > 0)
        {
            await page.GetByText("Read and understood").First.ClickAsync();
            await page.GetByText("Read and understood").First.WaitForAsync(new() { State = WaitForSelectorState.Detached });
        }

        var step = page.Locator("#step").First;
        var keys = step.Locator(".reading input");
        if (await keys.CountAsync() > 0)
        {
            await keys.FillAsync("300");
            await step.Locator("button[type=submit], .keypad button.primary").First.ClickAsync();
            await page.WaitForTimeoutAsync(50);
            if (await page.GetByText("It is right: record").CountAsync() > 0)
            {
                await page.GetByText("It is right: record").ClickAsync();
            }
        }
        else
        {
            await step.Locator(".choices .choice:not(.primary), .choices .choice.primary").First.ClickAsync();
        }

        await page.WaitForFunctionAsync("n => window.times.length >= n", n);
    }

    return await page.EvaluateAsync<double[]>("window.times");
}

async Task<(double First, double Again)> Visible(string address, string what)
{
    await using var context = await browser.NewContextAsync(new() { ViewportSize = new() { Width = 390, Height = 844 } });
    context.SetDefaultTimeout(120_000);
    var page = await context.NewPageAsync();
    var first = await Once();
    await page.EvaluateAsync("navigator.serviceWorker ? navigator.serviceWorker.ready.then(() => true) : true");
    await page.WaitForTimeoutAsync(1000);
    return (first, await Once());

    async Task<double> Once()
    {
        await page.GotoAsync("about:blank");
        var began = System.Diagnostics.Stopwatch.StartNew();
        await page.GotoAsync(address, new() { WaitUntil = WaitUntilState.Commit });
        await page.Locator(what).First.WaitForAsync();
        return began.Elapsed.TotalMilliseconds;
    }
}

static double Median(IEnumerable<double> values)
{
    var sorted = values.Order().ToArray();
    return sorted.Length % 2 == 1 ? sorted[sorted.Length / 2] : (sorted[sorted.Length / 2 - 1] + sorted[sorted.Length / 2]) / 2;
}

static void Say(string what, double[] times) => Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
    $"{what,-58} {Median(times),6:0} ms, {times.Min():0} to {times.Max():0}: {string.Join(' ', times.Select(t => t.ToString("0", CultureInfo.InvariantCulture)))}"));

static void Compare(string what, List<(double Ours, double Stock)> times) => Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
    $"{what,-58} {Median(times.Select(t => t.Ours)),6:0} ms, the stock template's first render {Median(times.Select(t => t.Stock)):0} ms: {Median(times.Select(t => t.Ours / t.Stock)):0.00} times"));
