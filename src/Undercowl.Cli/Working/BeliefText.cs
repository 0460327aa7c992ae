using System.Globalization;
using Undercowl.Diagnosis.Answers;

namespace Undercowl.Cli;

/// <summary>A belief as a table, with what must be known to read it rightly.</summary>
internal static class BeliefText
{
    /// <summary>A bound up to this counts as exact: one in a million, as in the belief.</summary>
    private const double Exact = 1e-6;

    private const double WorthShowing = 0.01;

    /// <summary>A cause mended since is shown when it was at least this likely as found.</summary>
    private const double Foremost = 0.1;

    private const int MendedShown = 3;

    private const int ConsequencesShown = 6;

    /// <summary>What may have befallen the engine is shown when it is this part of its prior more or less likely than that.</summary>
    private const double Moved = 0.5;

    /// <summary>What stands in the place of an entry for the complaint itself.</summary>
    private const string Complaint = "complaint";

    /// <param name="belief">The belief with all its causes.</param>
    /// <param name="top">How many causes are shown.</param>
    /// <param name="page">Where it is written.</param>
    public static void Write(BeliefAnswer belief, int top, Page page)
    {
        // What follows from something else is no place to begin mending, however likely it is.
        CauseBelief[] causes = [.. belief.Causes.Where(c => !c.Consequence).Take(top)];
        CauseBelief[] consequences = [.. belief.Causes.Where(c => c.Consequence && c.Now >= WorthShowing).Take(Math.Min(top, ConsequencesShown))];
        page.Table([["   now", "as found", " prior", "cause"], .. causes.Select(Row)]);
        // Mended since, so low in the list: but it is what was the matter.
        CauseBelief[] mended = [.. belief.Causes.Where(c => !c.Consequence && c.AsFound >= Foremost && c.Now < c.AsFound / 2).Except(causes).OrderByDescending(c => c.AsFound).Take(MendedShown)];
        if (mended.Length > 0)
        {
            page.Heading("As found, and dealt with since");
            page.Table([.. mended.Select(Row)]);
        }

        if (consequences.Length > 0)
        {
            page.Heading("Likely to follow from these");
            page.Table([.. consequences.Select(Row)]);
        }

        CommonCauseBelief[] befell = [.. belief.CommonCauses.Where(c => c.Probability >= WorthShowing && Math.Abs(c.Probability - c.Prior) >= Moved * c.Prior)];
        if (befell.Length > 0)
        {
            page.Heading("What befell the engine, where that is likelier or less likely than usual");
            page.Items("  - ", befell.Select(c => $"{Percent(c.Probability).Trim()} (usually {Percent(c.Prior).Trim()}): {c.Name}"));
        }

        page.Items("  ! ", causes.Concat(consequences).Where(c => c.Warning is not null && c.Now >= WorthShowing)
            .GroupBy(c => c.Warning!).Select(g => $"{string.Join("; ", g.Select(c => c.Name))}: {g.Key}"));
        if (belief.Explanations.Count > 0)
        {
            var names = belief.Causes.ToDictionary(c => c.Cause, c => c.Name);
            page.Heading($"Together, as found (these cover {Percent(belief.Coverage).Trim()})");
            page.Items("  - ", belief.Explanations.Select(e =>
                $"{Percent(e.Probability).Trim()}: {(e.Causes.Count == 0 ? $"none of the {belief.Considered} likeliest: something rarer, or nothing" : string.Join(" and ", e.Causes.Select(c => names.GetValueOrDefault(c, c))))}"));
        }

        if (belief.Conflict is { AtOdds.Count: > 0 } conflict)
        {
            page.Heading($"Findings at odds ({Math.Exp(conflict.Measure).ToString("0", CultureInfo.InvariantCulture)} times less likely together than apart)");
            page.Items("  - ", conflict.AtOdds.Select(a =>
                a.Entry == Complaint ? a.What : $"{a.What} [{a.Entry[^EntryWords.ShortLength..]}]"));
            page.Item("  ", "Repeat one of them, or take it back with undercowl withdraw; if all of them stand, look for a rare fault or several.");
        }

        page.Line();
        if (belief.Approximate)
        {
            page.Item("", $"Approximate: no figure is off by more than {belief.ErrorBound.ToString("0.######", CultureInfo.InvariantCulture)}.");
        }

        if (belief.KnowledgeChanged)
        {
            page.Item("", "The job was opened with other knowledge than today's; these are today's beliefs.");
        }

        page.Items("", belief.LeftOut);
        page.Items("", belief.WithoutEffect.Select(w => $"Without effect, because today's knowledge does not know it: {w}"));
        page.Item("", page.Paint.Quiet("A cause's id is in brackets: undercowl why JOB CAUSE says what moved it."));
    }

    /// <summary>A probability in six places, so that columns line up. Small ones keep a digit that says something.</summary>
    public static string Percent(double probability) =>
        (probability is > 0 and < 0.0005 ? "<0.1 %" : (probability * 100).ToString("0.0", CultureInfo.InvariantCulture) + " %").PadLeft(6);

    /// <summary>How likely the complaint is gone for good; by how much that may be off, where that is enough to say so (see BeliefAnswer.Approximate).</summary>
    /// <param name="healthy">That probability, 0 to 1.</param>
    /// <param name="bound">It is off by no more; 0 when exact.</param>
    public static string GoneForGood(double healthy, double bound) =>
        string.Create(CultureInfo.InvariantCulture, $"gone for good with probability {healthy:0.00}")
        + (bound > Exact ? string.Create(CultureInfo.InvariantCulture, $", off by no more than {Math.Ceiling(bound * 1000) / 1000:0.000}: this job is too large to sum exactly") : "");

    private static string[] Row(CauseBelief cause) => [Percent(cause.Now), $"{Percent(cause.AsFound),8}", Percent(cause.Prior), $"{cause.Name}  [{cause.Cause}]"];
}
