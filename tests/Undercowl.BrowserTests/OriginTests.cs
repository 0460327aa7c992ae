using Undercowl.BrowserTests.Fixtures;

namespace Undercowl.BrowserTests;

/// <summary>What leaves the origin: nothing. What runs that we did not write into a file: nothing.</summary>
[Collection(OneApp.Name)]
public sealed class OriginTests(App app)
{
    [Fact]
    public async Task No_request_leaves_the_origin_on_any_page()
    {
        await using var visit = await app.Visit();
        foreach (var (_, path, ready) in await PagesOfAJob.Of(visit))
        {
            await visit.Go(path);
            await visit.Page.Locator(ready).First.WaitForAsync();
        }

        Assert.NotEmpty(visit.Requests);
        Assert.DoesNotContain(visit.Requests, r => !r.StartsWith(app.Address + "/", StringComparison.Ordinal) && !r.StartsWith("blob:", StringComparison.Ordinal) && !r.StartsWith("data:", StringComparison.Ordinal));
    }

    [Fact]
    public async Task The_policy_is_strict_and_an_inline_script_does_not_run()
    {
        using var client = new HttpClient();
        using var answer = await client.GetAsync(new Uri(app.Address + "/job/any"), TestContext.Current.CancellationToken);
        var policy = Assert.Single(answer.Headers.GetValues("Content-Security-Policy"));
        Assert.DoesNotContain("unsafe-inline", policy, StringComparison.Ordinal);
        Assert.DoesNotContain("'unsafe-eval'", policy, StringComparison.Ordinal);
        Assert.Contains("default-src 'self'", policy, StringComparison.Ordinal);
        var visit = await app.Visit();
        await visit.Go("/");
        await visit.Page.EvaluateAsync("() => { const s = document.createElement('script'); s.textContent = 'window.ran = true'; document.head.append(s); }");
        Assert.False(await visit.Page.EvaluateAsync<bool>("!!window.ran"));
        Assert.Contains(visit.Errors, e => e.Contains("Content Security Policy", StringComparison.Ordinal));
        await visit.Context.DisposeAsync();
    }
}
