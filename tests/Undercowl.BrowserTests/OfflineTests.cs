using Microsoft.Playwright;
using Undercowl.BrowserTests.Fixtures;
using Undercowl.Jobs;

namespace Undercowl.BrowserTests;

/// <summary>After the first load the server may die, and the browser too.</summary>
public sealed class OfflineTests
{
    [Fact]
    public async Task With_the_server_dead_reload_deep_link_a_whole_job_and_its_report_work_and_after_a_restart_of_the_browser_all_is_there()
    {
        var profile = Directory.CreateTempSubdirectory("undercowl-profile-");
        try
        {
            using var playwright = await Playwright.CreateAsync();
            string job;
            int entries;
            string address;
            await using (var served = await Served.Start())
            {
                address = served.Address;
                await using var visit = await Visit.Begin(await playwright.Chromium.LaunchPersistentContextAsync(profile.FullName, Browser.Persistent), address);
                await visit.Go("/");
                await visit.Page.GetByRole(AriaRole.Heading, new() { Name = "Jobs", Exact = true }).WaitForAsync();
                await visit.Page.EvaluateAsync("navigator.serviceWorker.ready.then(() => true)");
                await served.Kill();

                await visit.Page.ReloadAsync();
                await visit.Link("Try the demonstration job").ClickAsync();
                await visit.Settled();
                job = visit.JobId;
                await visit.Go($"/job/{job}/stand");
                await visit.Page.GetByRole(AriaRole.Heading, new() { Name = "Fault by fault" }).WaitForAsync();
                await visit.Go($"/job/{job}");
                Assert.True(await new Technician(visit, touch: false).Work() > 5);
                await visit.Go($"/job/{job}/report");
                await visit.Page.GetByRole(AriaRole.Heading, new() { Name = "Job report" }).WaitForAsync();
                entries = (await visit.Job()).Count;
                // What the dead server could not answer is no error of the page; nothing may have been asked of it.
                Assert.Empty(visit.Errors);
            }

            await using var again = await Visit.Begin(await playwright.Chromium.LaunchPersistentContextAsync(profile.FullName, Browser.Persistent), address);
            await again.Go($"/job/{job}");
            await again.Page.GetByText("Ended: proven").First.WaitForAsync();
            var kept = await again.Job();
            Assert.Equal(entries, kept.Count);
            Assert.Equal(JobOutcome.Proven, Projection.Of(kept).Ending!.Body.Outcome);
        }
        finally
        {
            profile.Delete(recursive: true);
        }
    }
}
