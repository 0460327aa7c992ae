using Microsoft.AspNetCore.Components;
using Undercowl.App.Bench;
using Undercowl.App.Browser;
using Undercowl.App.Desk;

namespace Undercowl.App.Parts;

/// <summary>A page about one job: opens it, follows its changes, and leaves it.</summary>
public abstract class JobView : ComponentBase, IDisposable
{
    /// <summary>Long enough for the browser to paint. Estimate.</summary>
    private static readonly TimeSpan Breath = TimeSpan.FromMilliseconds(60);

    [Parameter]
    public string Id { get; set; } = "";

    [Inject]
    public JobDesk Desk { get; set; } = null!;

    public OpenJob? Job { get; private set; }

    protected bool Missing { get; private set; }

    /// <summary>True for a page that has something to show before the whole job is there.</summary>
    protected virtual bool Glances => false;

    public void Dispose()
    {
        Leave();
        GC.SuppressFinalize(this);
    }

    protected override async Task OnParametersSetAsync()
    {
        if (Job?.Head.Id != Id)
        {
            Leave();
            Job = await (Glances ? Desk.Glance(Id) : Desk.Open(Id));
            Missing = Job is null;
            if (Job is { } job)
            {
                job.Changed += OnChanged;
                _ = Fill(job);
                await Opened();
            }
        }
    }

    /// <summary>After what there is has been shown: the rest of the job, then the answer to it, then what a tap needs.</summary>
    private async Task Fill(OpenJob job)
    {
        await Task.Delay(Glances && job.Step is not null ? Breath : TimeSpan.Zero);
        await job.Refresh();
        BenchWorker.Wake();
        if (Glances)
        {
            await Task.Delay(Breath);
            // Read now, so that the first tap need not wait for it; an answer of other knowledge is worked out anew.
            if (job.Answer is { } answer && answer.Knowledge != Known.Bench.KnowledgeHash)
            {
                await job.Forget();
            }
        }
    }

    /// <summary>When the job is there.</summary>
    protected virtual Task Opened() => Task.CompletedTask;

    /// <summary>When something of the job has changed.</summary>
    protected virtual void OnChanged() => StateHasChanged();

    private void Leave()
    {
        if (Job is not null)
        {
            Job.Changed -= OnChanged;
        }
    }
}
