using System.Text.Json;
using Undercowl.Jobs;
using Undercowl.Knowledge;

namespace Undercowl.Cli.Commands;

/// <summary>The engine that a list is asked for: a job's, a layout's, or none in particular.</summary>
internal static class EngineAsked
{
    public static EngineLayout? Of(Shell shell, string? job, string? layout)
    {
        if (layout is not null)
        {
            return job is null
                ? shell.Knowledge.Bench.Layout(layout)
                : throw new Refusal("A job and a layout are named.", "Name one of them.");
        }

        if (job is null)
        {
            return null;
        }

        using var at = JobAtHand.Read(shell, job);
        return Projection.Of(at.Job).Layout is { } embedded
            ? JsonSerializer.Deserialize(embedded.Text, KnowledgeJson.Default.EngineLayout)
            : throw new Refusal($"{job} has no opening entry.", "Start a job first.");
    }
}
