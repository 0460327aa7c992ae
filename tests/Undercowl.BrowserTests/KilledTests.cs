using System.Diagnostics;
using Microsoft.Playwright;
using Undercowl.BrowserTests.Fixtures;
using Undercowl.Jobs;

namespace Undercowl.BrowserTests;

/// <summary>The tab is killed while it writes, again and again: what was acknowledged is there.</summary>
[Collection(OneApp.Name)]
public sealed class KilledTests(App app)
{
    private const int Kills = 100;

    /// <summary>Writes notes as fast as they are acknowledged, and tells of each that was.</summary>
    private const string Writing = """
        async job => {
          const store = await import('/js/store.js');
          const head = await store.head(job);
          const device = 'killed-' + crypto.randomUUID().slice(0, 8);
          for (let n = 1; ; n++) {
            const id = crypto.randomUUID().replace(/^(.{14})./, '$17');
            const line = JSON.stringify({ at: '2026-11-27T12:00:00.000Z', body: { text: 'note ' + n }, device, id, kind: 'note', parents: [job], seq: n });
            await store.append(head, line + '\n');
            await acknowledged(id);
          }
        }
        """;

    [Fact]
    public async Task The_tab_killed_a_hundred_times_while_it_writes_loses_nothing_that_was_acknowledged()
    {
        await using var visit = await app.Visit();
        await visit.Go("/");
        await visit.Link("Try the demonstration job").ClickAsync();
        await visit.Settled();
        var job = visit.JobId;
        var acknowledged = new List<string>();
        for (var kill = 0; kill < Kills; kill++)
        {
            var page = await visit.Context.NewPageAsync();
            await page.ExposeFunctionAsync<string, bool>("acknowledged", id =>
            {
                lock (acknowledged)
                {
                    acknowledged.Add(id);
                }

                return true;
            });
            await page.GotoAsync(app.Address + "/manifest.webmanifest");
            var before = acknowledged.Count;
            var writing = page.EvaluateAsync(Writing, job);
            var waited = Stopwatch.StartNew();
            while (acknowledged.Count <= before + kill % 4)
            {
                Assert.True(waited.Elapsed < TimeSpan.FromMinutes(1), "Nothing is written.");
                await Task.Delay(1, TestContext.Current.CancellationToken);
            }

            // No handler of the page runs: as when the phone goes flat. The order itself is never answered by a page that is gone.
            var crashed = new TaskCompletionSource();
            page.Crash += (_, _) => crashed.SetResult();
            var devtools = await visit.Context.NewCDPSessionAsync(page);
            var order = devtools.SendAsync("Page.crash");
            await crashed.Task.WaitAsync(TimeSpan.FromMinutes(1), TestContext.Current.CancellationToken);
            await Assert.ThrowsAnyAsync<PlaywrightException>(() => writing);
            await page.CloseAsync();
            await Assert.ThrowsAnyAsync<PlaywrightException>(() => order);
        }

        var lines = await visit.Page.EvaluateAsync<string>("async id => (await import('/js/store.js')).lines(id)", job);
        var kept = Job.Parse(System.Text.Encoding.UTF8.GetBytes(lines)).Whole().Entries.Select(e => e.Id.ToString()).ToHashSet();
        Assert.True(acknowledged.Count >= Kills);
        Assert.DoesNotContain(acknowledged, id => !kept.Contains(id));
    }
}
