using Undercowl.Diagnosis.Tests.Fixtures;
using Xunit;

namespace Undercowl.Diagnosis.Tests.Why;

/// <summary>Which numbers the next step hangs on: those named change it at the value named, and stay within what their source says.</summary>
public sealed class SensitivityTests
{
    [Fact]
    public void A_number_that_is_named_changes_the_next_step_and_keeps_within_its_range()
    {
        var story = Shop.Story("rope-1-magneto", "no-start").Find("spark-to-ground", "never");
        var answer = Shop.Workbench.Sensitivity(story.Job);
        Assert.Equal(story.Next(1)[0].Id, answer.Next.Id);
        Assert.InRange(answer.Tried, 20, 1000);
        Assert.NotEmpty(answer.Turning);
        foreach (var turning in answer.Turning.Take(3))
        {
            var instead = Shop.Workbench.With([(turning.Factor.Address, turning.To)]).Open(story.Job).Next(1).Proposals[0];
            Assert.Equal((turning.Instead.Id, turning.Instead.Place), (instead.Id, instead.Place));
            Assert.NotEqual((answer.Next.Kind, answer.Next.Id, answer.Next.Place), (turning.Instead.Kind, turning.Instead.Id, turning.Instead.Place));
        }

        var sources = Shop.Knowledge.Sources.ToDictionary(s => s.Id);
        Assert.All(answer.Turning, t =>
        {
            var source = sources[t.Factor.Source!];
            var odds = t.To / (1 - t.To) / (t.Factor.Value / (1 - t.Factor.Value));
            var (range, moved) = t.Factor.Unit is null && t.To < 1 && !t.Factor.Address.EndsWith("spread", StringComparison.Ordinal) && !t.Factor.Address.EndsWith("median", StringComparison.Ordinal)
                ? (source.Odds!.Value, odds) : (source.Times!.Value, t.To / t.Factor.Value);
            Assert.InRange(moved, 1 / range - 1e-9, range + 1e-9);
        });
    }

    /// <summary>Who keeps the knowledge can only be told which estimates to replace if each says how far it may be off.</summary>
    [Fact]
    public void Every_source_but_a_publication_says_how_far_its_numbers_may_be_off() =>
        Assert.All(Shop.Knowledge.Sources.Where(s => s.Kind != Knowledge.SourceKind.Publication), s => Assert.True(s.Odds is > 1 || s.Times is > 1, s.Id));
}
