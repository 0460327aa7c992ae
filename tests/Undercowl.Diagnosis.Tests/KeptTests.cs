using System.Text.Json;
using Undercowl.Diagnosis.Answers;
using Undercowl.Diagnosis.Graph;
using Undercowl.Diagnosis.Tests.Fixtures;
using Undercowl.Knowledge;
using Xunit;

namespace Undercowl.Diagnosis.Tests;

/// <summary>What is kept from one set-up, step or job to the next is what would be worked out afresh. All that is expected here is derived by the slow way.</summary>
public sealed class KeptTests
{
    private const int Mixed = 60;

    [Theory]
    [InlineData("two-stroke-3-cdi")]
    [InlineData("four-stroke-4-inductive")]
    [InlineData("two-stroke-6-banks")]
    public void A_quantity_kept_from_another_set_up_is_the_one_that_would_be_made(string layout)
    {
        var network = Shop.Story(layout, "no-start").Diagnosis.Network;
        var model = network.Model;
        string[] quantities = [.. model.Checks.Select(c => c.Likelihood.Quantity).OfType<string>().Distinct()];
        Assert.NotEmpty(quantities);
        var kept = new Dictionary<(int Quantity, int Cylinder, int Seen), Signal>();
        var afresh = 0;
        foreach (var setUp in SetUps(model.Knowledge, [.. LayoutPlaces.Expand(model.Layout, LayoutPlaces.EachCylinder)]))
        {
            var context = new CopyContext(network.Now, new SetUpState(model, setUp));
            var made = new Dictionary<(int Quantity, int Cylinder, int Seen), Signal>();
            var (shared, fresh) = (new QuantityCopies(network.Conditions, context, kept), new QuantityCopies(network.Conditions, context, made));
            foreach (var quantity in quantities)
            {
                var engine = model.Quantity(quantity).Per == QuantityScope.Engine;
                for (var cylinder = engine ? 0 : 1; cylinder <= (engine ? 0 : model.Layout.Cylinders); cylinder++)
                {
                    var (expected, found) = (fresh.Of(quantity, cylinder), shared.Of(quantity, cylinder));
                    Assert.True(
                        expected.Node == found.Node && expected.Map.SequenceEqual(found.Map), $"{quantity} {cylinder} in {string.Join(' ', setUp.Select(s => $"{s.Key}={s.Value}"))}");
                }
            }

            afresh += made.Count;
        }

        // Most of it was there already, or nothing was shown.
        Assert.InRange(kept.Count, 1, afresh / 2);
    }

    [Fact]
    public void A_bench_that_has_answered_for_other_jobs_and_ways_of_standing_answers_as_a_fresh_one()
    {
        Story[] stories =
        [
            Shop.Story("two-stroke-3-cdi", "no-start"),
            Shop.Story("two-stroke-3-cdi", "no-start").SetUp("stop-wire", "off"),
            Shop.Story("two-stroke-3-cdi", "no-start").Find("spark-to-ground", "never", "cyl:1"),
        ];
        var used = Shop.Workbench;
        foreach (var story in stories)
        {
            used.Open(story.Job).Next(8);
        }

        foreach (var story in stories)
        {
            Assert.Equal(Text(new Workbench(Shop.Knowledge, used.KnowledgeHash).Open(story.Job)), Text(used.Open(story.Job)));
        }

        static string Text(JobDiagnosis diagnosis) => JsonSerializer.Serialize(diagnosis.Next(8), AnswerJson.Default.NextAnswer);
    }

    /// <summary>Each value of each key by itself, and some together, from a seed.</summary>
    private static IEnumerable<Dictionary<string, string>> SetUps(KnowledgeBase knowledge, string[] cylinders)
    {
        (string Name, string Value)[] all = [.. knowledge.SetUps.SelectMany(k => k.Per == QuantityScope.Engine ? [k.Id] : cylinders.Select(c => $"{k.Id}@{c}").Append(k.Id), (k, name) => (k, name))
            .SelectMany(n => n.k.Values, (n, value) => (n.name, value.Id))];
        yield return [];
        foreach (var (name, value) in all)
        {
            yield return new Dictionary<string, string> { [name] = value };
        }

        var random = new Random(7);
        for (var i = 0; i < Mixed; i++)
        {
            var together = new Dictionary<string, string>();
            for (var j = 0; j < 4; j++)
            {
                var (name, value) = all[random.Next(all.Length)];
                together[name] = value;
            }

            yield return together;
        }
    }
}
