using System.Globalization;
using System.Text;
using System.Text.Json;
using Undercowl.Diagnosis.Answers;
using Undercowl.Diagnosis.Tests.Fixtures;
using Xunit;

namespace Undercowl.Diagnosis.Tests.Why;

/// <summary>
/// docs/why.md has what the tool says of three finished jobs, for a technician to read. With UNDERCOWL_WRITE_PAGES set it is written afresh instead of
/// being compared.
/// </summary>
public sealed class WhyPageTests
{
    private const string PagePath = "docs/why.md";

    public static TheoryData<int> Numbers => [.. Enumerable.Range(0, Finished.Jobs.Count)];

    [Theory]
    [MemberData(nameof(Numbers))]
    public void The_decibans_add_up_to_the_belief_that_is_shown(int number)
    {
        var (_, story, cause) = Finished.Jobs[number];
        var why = story.Diagnosis.Why(cause);
        var shown = story.AsFound(cause);
        Assert.Equal(why.PosteriorDecibans - why.PriorDecibans, why.Weights.Sum(w => w.Stepwise), 1e-9);
        Assert.Equal(10 * Math.Log10(shown / (1 - shown)), why.PriorDecibans + why.Weights.Sum(w => w.Stepwise), 1e-6);
        Assert.InRange(shown, 0.5, 1);
    }

    /// <summary>A look that cannot be wrong, by a hand that is never in doubt, excludes what it did not see: that is more than is told, and no number without end.</summary>
    [Fact]
    public void What_a_finding_excludes_is_told_as_more_than_so_many_decibans()
    {
        const string Off = "lanyard-switch@side:boat.clip=off";
        var sure = Shop.Knowledge with
        {
            Hands = [.. Shop.Knowledge.Hands.Select(h => h with { Doubt = 0 })],
            Checks = [.. Shop.Knowledge.Checks.Select(c => c.Id != "lanyard-clip" ? c : c with
            {
                Likelihood = c.Likelihood with { Fresh = 0, Given = new() { ["sound"] = new() { ["home"] = 0.98, ["off"] = 0.02 }, ["off"] = new() { ["home"] = 0, ["off"] = 1 } } },
            })],
        };
        var why = Shop.Story(sure, "two-stroke-3-cdi", "no-start").Find("lanyard-clip", "home").Find("tank-level", "enough").Diagnosis.Why(Off);
        Assert.Equal(-WhyAnswer.Most, why.PosteriorDecibans);
        var look = why.Weights.Single(w => w.What.StartsWith("Lanyard clip", StringComparison.Ordinal));
        Assert.True(look.StepwiseAtLeast && double.IsFinite(look.Stepwise));
        Assert.Contains(why.Saying, s => s.StartsWith("All but rules it out, more than 1", StringComparison.Ordinal));
        Assert.DoesNotContain("Infinity", JsonSerializer.Serialize(why, AnswerJson.Default.WhyAnswer), StringComparison.Ordinal);
        Assert.Equal(why.PosteriorDecibans - why.PriorDecibans, why.Weights.Sum(w => w.Stepwise), 1e-9);
    }

    [Fact]
    public void The_page_has_three_finished_jobs() => GeneratedPage.Check(PagePath, Page());

    private static string Page()
    {
        var page = new StringBuilder("""
            # Why a cause is believed

            What `undercowl why JOB CAUSE` says of three finished jobs, invented here. Sentences come most telling first; the table is in the order of the
            job. Stepwise weights (decibans: ten are a factor of ten in the odds) add up from the prior to the belief that is shown; what would be lost without a
            finding does not add up, and where it is small the other findings say as much. A test writes this page with `UNDERCOWL_WRITE_PAGES=1`,
            and compares it otherwise. `--audit` goes on to the numbers below that, with their sources.

            """);
        foreach (var (title, story, cause) in Finished.Jobs)
        {
            var why = story.Diagnosis.Why(cause);
            page.Append(CultureInfo.InvariantCulture, $"\n## {title}\n\n`{cause}`\n\n");
            page.AppendJoin("", why.Saying.Select(s => $"- {s}\n"));
            page.Append(CultureInfo.InvariantCulture, $"\n| stepwise | without it | what |\n| ---: | ---: | --- |\n| {why.PriorDecibans:+0.0;-0.0} | | before anything was heard |\n");
            page.AppendJoin("", why.Weights.Select(w => string.Create(CultureInfo.InvariantCulture, $"| {w.Stepwise:+0.0;-0.0;0.0} | {w.LeaveOneOut:+0.0;-0.0;0.0} | {w.What} |\n")));
            page.Append(CultureInfo.InvariantCulture, $"| {why.PosteriorDecibans:+0.0;-0.0} | | {100 * why.AsFound:0.0} % as found |\n");
        }

        return page.ToString();
    }
}
