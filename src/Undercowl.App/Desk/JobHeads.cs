using System.Text.Json;
using Undercowl.Diagnosis;
using Undercowl.Jobs;
using Undercowl.Knowledge;

namespace Undercowl.App.Desk;

/// <summary>Makes the head of a job from its entries.</summary>
internal static class JobHeads
{
    /// <param name="job">A job with an opening entry.</param>
    /// <param name="complaint">The complaint in words.</param>
    /// <param name="title">What the technician calls it; empty for none.</param>
    /// <exception cref="DiagnosisException">The job has no opening entry.</exception>
    public static JobHead Of(Job job, string complaint, string title)
    {
        var projection = Projection.Of(job);
        var opening = projection.Opening ?? throw new DiagnosisException("The job has no opening entry.", "It is no whole job: export it again where it came from.");
        var layout = JsonSerializer.Deserialize(projection.Layout!.Text, KnowledgeJson.Default.EngineLayout);
        var telling = job.Entries.Where(e => e.Body is not CautionAcknowledged).ToArray();
        return new JobHead(
            opening.Id.ToString(),
            title,
            layout?.Name ?? "",
            complaint,
            opening.Body.Complaint.Words,
            opening.Entry.At,
            job.Entries.Max(e => e.At),
            projection.Ending is { } ended ? Undercowl.Diagnosis.Working.Outcomes.Text(ended.Body.Outcome) : "open",
            $"{telling.Length} {telling[^1].Id}");
    }

    /// <summary>The complaint that a job began with, in words.</summary>
    public static string Complaint(Job job, Workbench bench) => Projection.Of(job).Opening?.Body.Complaint.Id is { } id
        ? bench.Knowledge.ComplaintOf(id)?.Name ?? id
        : throw new DiagnosisException("The job has no opening entry.", "It is no whole job: export it again where it came from.");
}
