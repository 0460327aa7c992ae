using System.Globalization;
using System.Text;
using Undercowl.Diagnosis.Answers;
using Undercowl.Diagnosis.Beliefs;
using Undercowl.Diagnosis.Readings;
using Undercowl.Diagnosis.Tests.Fixtures;
using Undercowl.Knowledge;
using Xunit;

namespace Undercowl.Diagnosis.Tests.Weights;

/// <summary>
/// What one reading can weigh, for every check: no colour, appearance or generic range of resistance more than its stated cap. docs/weights.md is
/// written by the last test with UNDERCOWL_WRITE_PAGES set, and compared otherwise. That colour is worth about 3 decibans is judgement of the trade.
/// </summary>
public sealed class WeightsTests
{
    private const string PagePath = "docs/weights.md";
    private const double Rounding = 1e-6;

    /// <summary>Checks of colour, of what a plug or a contact looks like, and of ohms against a range.</summary>
    private static readonly string[] Doubtful =
    [
        "spark-brightness", "plug-own-spark", "known-good-plug-spark", "plug-deposit", "plug-wetness", "plug-electrodes", "plug-insulator",
        "charge-connector-look", "coil-connector-look", "group-connector-look", "injector-connector-look", "main-plug-look", "trigger-connector-look",
        "unit-connector-look", "terminals-look", "fuel-sample",
        "charge-coil-ohms", "coil-secondary-ohms", "crank-sensor-ohms", "double-coil-primary-ohms", "double-coil-secondary-ohms", "plug-cap-ohms", "trigger-ohms",
    ];

    private static readonly Lazy<IReadOnlyList<CheckWeights>> Weighed = new(() => [.. Shop.Knowledge.Checks.Select(CheckWeights.Of).OfType<CheckWeights>()]);

    public static TheoryData<string> DoubtfulChecks => [.. Doubtful];

    [Theory]
    [MemberData(nameof(DoubtfulChecks))]
    public void What_is_doubtful_has_a_cap_and_keeps_to_it(string id)
    {
        var check = Shop.Knowledge.Checks.Single(c => c.Id == id);
        Assert.NotEmpty(check.Caps);
        var weights = Weighed.Value.Single(w => w.Check.Id == id);
        foreach (var cap in check.Caps)
        {
            if (check.Number is not null)
            {
                Assert.All(weights.Readings.Where(r => r.Generic && r.Reading != "over range"), r => Assert.InRange(r.Decibans, 0, cap.Decibans + Rounding));
            }
            else
            {
                Assert.All(weights.Among(cap.Readings), decibans => Assert.InRange(decibans, 0, cap.Decibans + Rounding));
            }
        }
    }

    /// <summary>With one of each, that it was over range or not says nothing: what is left is the number.</summary>
    [Theory]
    [InlineData("charge-coil-ohms", "15 ohm", null)]
    [InlineData("trigger-ohms", "26 ohm", "cyl:2")]
    public void A_number_by_a_generic_range_keeps_to_its_cap_beside_a_reading_over_range(string id, string number, string? at)
    {
        var laid = Shop.Story("two-stroke-3-cdi", "no-start").Find(id, number, at).Find(id, "open", at).Diagnosis.Network.Laid.Where(l => l.Check.Id == id).ToArray();
        Assert.Equal(2, laid.Length);
        Assert.Single(laid.Select(l => l.Company).Distinct());
        var cap = laid[0].Check.Caps[0].Decibans;
        Assert.InRange(Decibans(laid[0]), cap - Rounding, cap + Rounding);
        Assert.InRange(Decibans(laid), cap - Rounding, cap + Rounding);

        static double Decibans(params LaidFinding[] laid)
        {
            var likelihood = ReadingLikelihood.Of(new ReadingGroup(laid[0].Check, laid[0].Levels, 0, [.. laid.Select(l => l.Reading)], laid[0].Kilovolts))!;
            return 10 * Math.Log10(likelihood.Max() / likelihood.Min());
        }
    }

    [Fact]
    public void Every_check_is_weighed() => Assert.Equal(Shop.Knowledge.Checks.Select(c => c.Id), Weighed.Value.Select(w => w.Check.Id));

    [Fact]
    public void In_a_job_the_heaviest_reading_moves_no_cause_by_more_than_its_bound() => Assert.All(Weighed.Value, w =>
        Assert.True(w.Seen.Decibans <= w.Heaviest.Decibans + Rounding, $"{w.Check.Id} {w.Heaviest.Reading}: {w.Seen} beyond {w.Heaviest.Decibans}"));

    /// <summary>Presence and colour apart: from "a spark" to "an orange spark" no cause moves by more than the cap, so from blue to orange by no more than twice.</summary>
    [Theory]
    [InlineData("spark-brightness", "bright", "dim")]
    [InlineData("plug-own-spark", "blue", "orange")]
    [InlineData("known-good-plug-spark", "blue", "orange")]
    public void Of_two_colours_of_a_spark_that_was_seen_one_moves_no_cause_far_from_the_other(string check, string one, string other)
    {
        var start = Shop.Story("two-stroke-3-cdi", "misses").FindAll("spark-to-ground", "always", [1, 3]);
        var cap = Shop.Knowledge.Checks.Single(c => c.Id == check).Caps[0].Decibans;
        var job = start.Job;
        var first = Causes(new Story(start, job).Find(check, one, "cyl:2"));
        var second = Causes(new Story(start, job).Find(check, other, "cyl:2"));
        Assert.All(first.Zip(second), pair => Assert.InRange(Math.Abs(Decibans.Of(pair.First.AsFound) - Decibans.Of(pair.Second.AsFound)), 0, 2 * cap + Rounding));
    }

    [Fact]
    public void The_page_has_the_weight_of_every_check() => GeneratedPage.Check(PagePath, Page());

    private static IEnumerable<CauseBelief> Causes(Story story) => story.Diagnosis.Belief.Causes().OrderBy(c => c.Cause, StringComparer.Ordinal);

    private static string Page()
    {
        var page = new StringBuilder("""
            # What one reading can weigh

            For every check its heaviest single reading by a trained hand, and the most that this reading can move any cause, whatever else is known: ten
            times the common logarithm of the ratio of its chances at the two levels that it tells apart best (decibans; 10 are a factor of ten in the
            odds). Numbers are judged by generic ranges, as long as the engine's own figures are not entered. *Cap* is what `knowledge/` states for it:
            a colour, a look or a generic range of resistance is held to it. With readings named in brackets it holds for which of these was read, given that it was
            one of them: that there is a spark may weigh more than its colour. "Over range" is no matter of a range and has no cap.
            *In a job* is the cause that this reading moves most in a fresh job of the first layout that knows the check. A test works all of this out and
            compares it with this page; with `UNDERCOWL_WRITE_PAGES=1` it writes the page.

            | check | heaviest reading | at most | cap | in a job | moved by |
            | --- | --- | ---: | --- | --- | ---: |

            """);
        foreach (var weights in Weighed.Value.OrderByDescending(w => Math.Round(w.Heaviest.Decibans, 3)).ThenBy(w => w.Check.Id, StringComparer.Ordinal))
        {
            page.Append(CultureInfo.InvariantCulture, $"| `{weights.Check.Id}` | {weights.Heaviest.Reading} | {weights.Heaviest.Decibans:0.0} | {string.Join("; ", weights.Check.Caps.Select(Said))} | `{weights.Seen.Cause}` | {weights.Seen.Signed:+0.0;-0.0;0.0} |\n");
        }

        return page.ToString();

        static string Said(ReadingCap cap) => string.Create(CultureInfo.InvariantCulture, $"{cap.Decibans}{(cap.Readings.Count == 0 ? "" : $" ({string.Join(", ", cap.Readings)})")}");
    }
}
