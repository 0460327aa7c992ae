using Microsoft.AspNetCore.Components;
using Undercowl.App.Desk;

namespace Undercowl.App.Parts;

/// <summary>A page about one job: opens it, follows its changes, and leaves it.</summary>
public abstract class JobView : ComponentBase, IDisposable
{
    [Parameter]
    public string Id { get; set; } = "";

    [Inject]
    public JobDesk Desk { get; set; } = null!;

    public OpenJob? Job { get; private set; }

    protected bool Missing { get; private set; }

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
            Job = await Desk.Open(Id);
            Missing = Job is null;
            if (Job is { } job)
            {
                job.Changed += OnChanged;
                _ = job.Refresh();
                await Opened();
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
