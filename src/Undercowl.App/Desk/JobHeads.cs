using System.Text.Json;
using Undercowl.Diagnosis;
using Undercowl.Jobs;
using Undercowl.Knowledge;

namespace Undercowl.App.Desk;

/// <summary>Makes the head of a job from its entries.</summary>
internal static class JobHeads
{
    /// <param name="job">A job with an opening entry.</param>
    /// <param name="bench">For the complaint in words.</param>
    /// <param name="title">What the technician calls it; empty for none.</param>
    /// <exception cref="DiagnosisException">The job has no opening entry.</exception>
    public static JobHead Of(Job job, Workbench bench, string title)
    {
        var projection = Projection.Of(job);
        var opening = projection.Opening ?? throw new DiagnosisException("The job has no opening entry.", "It is no whole job: export it again where it came from.");
        var layout = JsonSerializer.Deserialize(projection.Layout!.Text, KnowledgeJson.Default.EngineLayout);
        var complaint = opening.Body.Complaint;
        return new JobHead(
            opening.Id.ToString(),
            title,
            layout?.Name ?? "",
            bench.Knowledge.Complaints.FirstOrDefault(c => c.Id == complaint.Id)?.Name ?? complaint.Id,
            complaint.Words,
            opening.Entry.At,
            job.Entries.Max(e => e.At),
            projection.Ending is { } ended ? Undercowl.Diagnosis.Working.Outcomes.Text(ended.Body.Outcome) : "open");
    }
}
