using Microsoft.Playwright;

namespace Undercowl.BrowserTests.Fixtures;

/// <summary>One server and one browser for all tests of the collection; each test has a profile of its own.</summary>
public sealed class App : IAsyncLifetime
{
    private IPlaywright? _playwright;
    private IBrowser? _browser;
    private Served? _served;

    public string Address => _served!.Address;

    public async ValueTask InitializeAsync()
    {
        _served = await Served.Start();
        _playwright = await Playwright.CreateAsync();
        _browser = await _playwright.Chromium.LaunchAsync(Browser.Options);
    }

    /// <summary>A fresh profile with one page, which fails the test when the page reports an error.</summary>
    internal async Task<Visit> Visit(BrowserNewContextOptions? options = null) => await Fixtures.Visit.Begin(await _browser!.NewContextAsync(options ?? Browser.Phone), Address);

    public async ValueTask DisposeAsync()
    {
        if (_browser is not null)
        {
            await _browser.DisposeAsync();
        }

        _playwright?.Dispose();
        if (_served is not null)
        {
            await _served.DisposeAsync();
        }
    }
}

[CollectionDefinition(Name)]
public sealed class OneApp : ICollectionFixture<App>
{
    public const string Name = "app";
}
