using Undercowl.Diagnosis.Answers;

namespace Undercowl.Cli;

/// <summary>A job's record as plain text that prints well.</summary>
internal static class ReportText
{
    private const string Caution = "caution-acknowledged";

    public static void Write(ReportAnswer report, Page page)
    {
        page.Line(page.Paint.Strong("JOB RECORD"));
        page.Item("Engine     ", report.Layout);
        page.Item("Complaint  ", report.Complaint);
        page.Item("Outcome    ", report.Outcome);
        page.Item("Proven     ", $"{(report.Proof.Proven ? "yes" : "no")}; {BeliefText.GoneForGood(report.Proof.HealthyNow, report.Proof.ErrorBound)}");
        page.Items("  missing  ", report.Proof.Missing);
        Section(page, "What was done", report.Entries.Where(e => e.Kind != Caution));
        Section(page, "Taken back", report.Withdrawn);
        Items(page, "Cautions read", report.Entries.Where(e => e.Kind == Caution).Select(e => e.Text).Distinct());
        page.Heading("Leading causes, as found");
        page.Table([.. report.Leading.Select(c => new[] { "  " + BeliefText.Percent(c.AsFound), c.Name })]);
        Items(page, "Still to put back", report.Restore.Select(r => $"{r.What}. {r.How}"));
        Items(page, "Not clear", report.Interlocks);
        Items(page, "To know", report.Notices);
    }

    private static void Section(Page page, string title, IEnumerable<ReportEntry> entries)
    {
        if (entries.Any())
        {
            page.Heading(title);
            foreach (var entry in entries)
            {
                page.Item($"  {entry.At}  {entry.Entry[^8..]}  ", entry.Text);
            }
        }
    }

    private static void Items(Page page, string title, IEnumerable<string> texts)
    {
        if (texts.Any())
        {
            page.Heading(title);
            page.Items("  - ", texts);
        }
    }
}
