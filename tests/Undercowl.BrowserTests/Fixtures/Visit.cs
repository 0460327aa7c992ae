using System.Text;
using System.Text.Json;
using Microsoft.Playwright;
using Undercowl.Diagnosis.Answers;
using Undercowl.Jobs;

namespace Undercowl.BrowserTests.Fixtures;

/// <summary>A page in a profile of its own, and what it complained of. Every request and every message of the console is kept.</summary>
internal sealed class Visit : IAsyncDisposable
{
    /// <summary>Slow machines are no failures; nothing here is timed.</summary>
    private const float Patience = 120_000;

    private readonly IBrowserContext _context;

    private Visit(IBrowserContext context, IPage page, string address) => (_context, Page, Address) = (context, page, address);

    public IPage Page { get; }

    public IBrowserContext Context => _context;

    public string Address { get; }

    /// <summary>Errors of the page: of scripts, of its policy, of files that were not there.</summary>
    public List<string> Errors { get; } = [];

    public List<string> Requests { get; } = [];

    public static async Task<Visit> Begin(IBrowserContext context, string address)
    {
        context.SetDefaultTimeout(Patience);
        var visit = new Visit(context, context.Pages.Count > 0 ? context.Pages[0] : await context.NewPageAsync(), address);
        visit.Page.PageError += (_, error) => visit.Errors.Add(error);
        visit.Page.Console += (_, said) =>
        {
            if (said.Type is "error")
            {
                visit.Errors.Add(said.Text);
            }
        };
        context.Request += (_, request) => visit.Requests.Add(request.Url);
        return visit;
    }

    public Task Go(string path) => Page.GotoAsync(Address + path);

    public ILocator Button(string name, bool exact = true) => Page.GetByRole(AriaRole.Button, new() { Name = name, Exact = exact });

    public ILocator Link(string name) => Page.GetByRole(AriaRole.Link, new() { Name = name, Exact = true });

    /// <summary>When the step of the job as it is now stands there, not one of before.</summary>
    public Task Settled() => Page.Locator("section.now[aria-busy=false]").WaitForAsync();

    public string JobId => new Uri(Page.Url).AbsolutePath.Split('/')[2];

    /// <summary>The log as it lies on the disk.</summary>
    public async Task<Job> Job()
    {
        var lines = await Page.EvaluateAsync<string>("async id => (await import('/js/store.js')).lines(id)", JobId);
        return Undercowl.Jobs.Job.Parse(Encoding.UTF8.GetBytes(lines)).Whole();
    }

    /// <summary>The answer document that the worker gave last, as it was kept.</summary>
    public async Task<(JobAnswer Answer, string Text)> Answer()
    {
        var kept = await Page.EvaluateAsync<string>("async id => (await import('/js/store.js')).answer(id)", JobId);
        // What it is for, the step by itself, the whole.
        var text = kept.Split('\n', 3)[2];
        return (JsonSerializer.Deserialize(text, AnswerJson.Default.JobAnswer)!, text);
    }

    public async ValueTask DisposeAsync()
    {
        await _context.DisposeAsync();
        Assert.Empty(Errors);
    }
}
