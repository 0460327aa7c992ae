using System.Text.Json;
using Undercowl.Diagnosis.Answers;
using Undercowl.Jobs;

namespace Undercowl.App.Desk;

/// <summary>
/// How the demonstration begins, and its first answer, worked out when the program was made (a test works it out anew), so that the first step is
/// there before the knowledge is read. <c>Desk/demo-start.json</c>; the whole answer beside it, as text that is not read before it is wanted.
/// </summary>
/// <param name="Knowledge">Hash of the knowledge it was made with.</param>
/// <param name="Layout">The engine layout.</param>
/// <param name="LayoutName">The layout in words.</param>
/// <param name="Complaint">Id of the complaint.</param>
/// <param name="SetUp">The complaint's set-up.</param>
/// <param name="ComplaintName">The complaint in words.</param>
/// <param name="Words">The customer's words.</param>
/// <param name="Intake">What was heard to begin with, question and answer.</param>
/// <param name="At">The time that the answer has for them.</param>
/// <param name="Entries">Ids that the answer has for these entries.</param>
/// <param name="Step">The first step by itself, as <see cref="StepShown"/>.</param>
internal sealed record DemoStart(
    string Knowledge,
    JsonElement Layout,
    string LayoutName,
    string Complaint,
    Dictionary<string, string> SetUp,
    string ComplaintName,
    string Words,
    string[][] Intake,
    string At,
    string[] Entries,
    JsonElement Step)
{
    /// <summary>A new job that begins so.</summary>
    /// <param name="answer">The answer document.</param>
    /// <param name="writer">Makes the entries.</param>
    public async Task<OpenJob> Begin(string answer, EntryWriter writer)
    {
        var opening = new Opened(EmbeddedJson.Of(Layout.GetRawText()), Knowledge, new Complaint(Complaint, SetUp, Words));
        var now = TimeProvider.System.GetUtcNow();
        var head = new JobHead("", "Demonstration", LayoutName, ComplaintName, Words, now, now, "open", Demo: true);
        var open = await OpenJob.Begin(opening, head, [.. Intake.Select(i => new Intake(i[0], i[1]))], writer);
        var ours = Entries.Zip(open.Job.Entries).Aggregate(answer, (text, pair) => text.Replace(pair.First, pair.Second.Id.ToString(), StringComparison.Ordinal));
        await open.Give(Step.GetRawText(), ours.Replace(At, ReportEntry.Time(open.Job.Entries[0].At), StringComparison.Ordinal));
        return open;
    }
}
