using System.Globalization;
using Undercowl.Diagnosis.Answers;

namespace Undercowl.Cli;

/// <summary>A belief as a table, with what must be known to read it rightly.</summary>
internal static class BeliefText
{
    private const double WorthShowing = 0.01;

    public static void Write(BeliefAnswer belief, int top, Page page)
    {
        page.Table(
        [
            ["   now", "as found", " prior", "cause"],
            .. belief.Causes.Take(top).Select(c => new[] { Percent(c.Now), $"{Percent(c.AsFound),8}", Percent(c.Prior), $"{c.Name}{(c.Consequence ? " (a consequence)" : "")}  [{c.Cause}]" }),
        ]);
        page.Items("  ! ", belief.Causes.Take(top).Where(c => c.Warning is not null && c.Now >= WorthShowing).Select(c => $"{c.Name}: {c.Warning}"));
        if (belief.Explanations.Count > 0)
        {
            page.Heading($"Together (these cover {Percent(belief.Coverage).Trim()})");
            page.Items("  - ", belief.Explanations.Select(e => $"{Percent(e.Probability).Trim()}: {(e.Causes.Count == 0 ? "none of these" : string.Join(" and ", e.Causes))}"));
        }

        if (belief.Approximate)
        {
            page.Item("", $"Approximate: no figure is off by more than {belief.ErrorBound.ToString("0.######", CultureInfo.InvariantCulture)}.");
        }

        if (belief.KnowledgeChanged)
        {
            page.Item("", "The job was opened with other knowledge than today's; these are today's beliefs.");
        }

        page.Items("Without effect, because today's knowledge does not know it: ", belief.WithoutEffect);
    }

    /// <summary>A probability in six places, so that columns line up. Small ones keep a digit that says something.</summary>
    public static string Percent(double probability) =>
        (probability is > 0 and < 0.0005 ? "<0.1 %" : (probability * 100).ToString("0.0", CultureInfo.InvariantCulture) + " %").PadLeft(6);
}
