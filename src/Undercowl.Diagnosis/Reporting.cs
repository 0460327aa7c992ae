using Undercowl.Diagnosis.Answers;
using Undercowl.Diagnosis.Beliefs;
using Undercowl.Diagnosis.Engine;
using Undercowl.Diagnosis.History;
using Undercowl.Jobs;
using Undercowl.Knowledge;

namespace Undercowl.Diagnosis;

/// <summary>Writes the record of a job.</summary>
internal static class Reporting
{
    private const int Leading = 5;

    public static ReportAnswer Of(JobDiagnosis diagnosis, Belief belief, ProofAnswer proof, bool knowledgeChanged)
    {
        var projection = diagnosis.Projection;
        var knowledge = diagnosis.Knowledge;
        var notices = new List<string> { "The engine maker's manual, local rules and licensed practice prevail over anything said here." };
        if (knowledgeChanged)
        {
            notices.Add("The job was opened with other knowledge than today's; beliefs here are today's.");
        }

        if (diagnosis.Network.Laid.Any(l => l.Reading.Circumstances.Reference is { Own: false }))
        {
            notices.Add("Some readings were judged on generic ranges, not on this engine's own specifications.");
        }

        notices.AddRange(diagnosis.Network.WithoutEffect.Select(f => $"Without effect, because today's knowledge does not know it: {f.Check}{Words.At(f.Place.Text)} ({f.Id.ToString()[^8..]}): {f.Why}"));
        notices.AddRange(projection.Findings.Where(f => f.Body.Against is { Count: > 0 })
            .Select(f => $"Done although withheld ({string.Join(", ", f.Body.Against!)}): {Check(knowledge, f.Body)?.Name ?? f.Body.Check}."));
        return new ReportAnswer(
            1,
            diagnosis.Layout.Name,
            string.Join("; ", projection.Complaints.Select(c => (knowledge.ComplaintOf(c.Id)?.Name ?? c.Id) + (c.Words is null ? "" : $" (\"{c.Words}\")"))),
            [.. projection.Live.Select(e => Entry(diagnosis.Network.Model, e))],
            [.. projection.Withdrawn.Select(w => Entry(diagnosis.Network.Model, w.Entry))],
            [.. belief.Causes().Where(c => !c.Consequence).OrderByDescending(c => c.AsFound).Take(Leading)],
            proof,
            [.. diagnosis.Restore.Select(r => new RestoreAnswer(r.Key, r.What, r.How))],
            [.. diagnosis.Interlocks.Where(i => !i.Clear).Select(i => i.Reason)],
            notices,
            projection.Ending is { } ended ? Kebab(ended.Body.Outcome.ToString()) : "open");
    }

    /// <summary>The last entries that hold, latest first; cautions read are left out.</summary>
    public static IReadOnlyList<ReportEntry> Last(JobDiagnosis diagnosis, int count) =>
        [.. diagnosis.Projection.Live.Reverse().Where(e => e.Body is not CautionAcknowledged).Take(count).Select(e => Entry(diagnosis.Network.Model, e))];

    private static ReportEntry Entry(EngineModel model, Entry entry) => new(
        entry.Id.ToString(), ReportEntry.Time(entry.At), entry.Body.Kind, Text(model, model.Knowledge, entry.Body));

    private static string Text(EngineModel model, KnowledgeBase knowledge, EntryBody body) => body switch
    {
        Opened opened => $"Opened: {knowledge.ComplaintOf(opened.Complaint.Id)?.Name ?? opened.Complaint.Id}",
        Finding f => $"{Check(knowledge, f)?.Name ?? f.Check}{Words.At(model, Check(knowledge, f)?.At ?? "", f.Place.Text)}: {Words.Reading(Check(knowledge, f), f.Value)}{TakenWith(model, Check(knowledge, f), f)}",
        Jobs.Remedy r => $"{knowledge.RemedyOf(r.Action)?.Name ?? r.Action}{Words.At(model, knowledge.RemedyOf(r.Action)?.Part ?? "", r.Place.Text)}{(r.Result is { } came ? $": {Words.Result(came)}" : "")}",
        Result r => $"What came of the remedy {r.Of.ToString()[^8..]}: {Words.Result(r.Came)}",
        Swap s => $"Exchanged: {knowledge.PartOf(s.Part)?.Name ?? s.Part}{Words.At(s.A.Text)} with that{Words.At(s.B.Text)}",
        SetUpChange c => $"Engine as it stands: {string.Join(", ", c.Change.Select(p => Words.State(model, p.Key, p.Value)))}",
        Intake i => knowledge.QuestionOf(i.Question) is { } asked
            ? $"{asked.Ask} {asked.Answers.FirstOrDefault(a => a.Id == i.Answer)?.Name ?? i.Answer}"
            : $"{i.Question} {i.Answer}",
        Ventilated v => $"Clear of vapour: {string.Join(", ", v.Clear)}",
        Jobs.Interlock i => $"{knowledge.Interlocks.SelectMany(k => k.Lift).FirstOrDefault(l => l.Id == i.Id)?.Name ?? i.Id}: {i.State}",
        Occasion o => $"{o.Why} ({o.Heat.ToString().ToLowerInvariant()})",
        Declined d => $"Declined {d.What}: {d.Why}",
        Note n => n.Text,
        Withdrawn w => $"Taken back: {w.Entry.ToString()[^8..]}. {w.Why}",
        Specs s => $"Own specification of {s.Part} {s.Item}, from {s.Origin}",
        Ambient a => $"Ambient: {string.Join(", ", new[] { a.Temperature, a.Pressure, a.Altitude, a.Humidity }.OfType<Measured>())}",
        CautionAcknowledged c => knowledge.Cautions.FirstOrDefault(k => k.Id == c.Caution)?.Text ?? c.Caution,
        Proof p => p.Statement,
        SignOff s => $"Signed off as {Kebab(s.Outcome.ToString())} by {s.By}",
        _ => body.Kind,
    };

    /// <summary>The states that a reading was taken in and that its check does not bring about, where they are not the usual ones.</summary>
    private static string TakenWith(EngineModel model, Check? check, Finding finding)
    {
        string[] states = [.. finding.SetUp
            .Where(s => model.SetUpKey(s.Key.Split('@')[0]) is { } key && s.Value != key.Default && check is not null && !SetUpResolution.Brings(check, finding.Place.Text, s.Key))
            .OrderBy(s => s.Key, StringComparer.Ordinal)
            .Select(s => Words.State(model, s.Key, s.Value))];
        return states.Length == 0 ? "" : $" (taken with: {string.Join(", ", states)})";
    }

    private static Check? Check(KnowledgeBase knowledge, Finding finding) => knowledge.CheckOf(finding.Check);

    private static string Kebab(string word) =>
        string.Concat(word.Select((c, i) => char.IsUpper(c) ? (i > 0 ? "-" : "") + char.ToLowerInvariant(c) : c.ToString()));
}
