using Undercowl.Diagnosis.Tests.Fixtures;
using Xunit;

namespace Undercowl.Diagnosis.Tests;

/// <summary>An answer that explains fewer causes than are worth it says so.</summary>
public sealed class ExplainedTests
{
    [Fact]
    public void Where_more_causes_are_worth_it_than_can_be_told_apart_the_answer_says_how_many_are()
    {
        var belief = Shop.Story("four-stroke-4-inductive", "no-start").Diagnosis.BeliefNow();
        Assert.InRange(belief.Considered, 1, 12);
        Assert.Contains($"for the {belief.Considered} likeliest of ", Assert.Single(belief.LeftOut), StringComparison.Ordinal);
        Assert.True(belief.Explanations.Max(e => e.Causes.Count) <= belief.Considered);
    }

    [Fact]
    public void Where_all_that_is_worth_it_is_told_apart_nothing_is_left_out()
    {
        var story = Shop.Story("rope-1-magneto", "no-start").Find("spark-to-ground", "never").Find("spark-stop-wire-off", "always").Find("lanyard-clip", "off").Find("lanyard-clip", "off");
        var belief = story.Diagnosis.BeliefNow();
        Assert.Empty(belief.LeftOut);
        Assert.NotEmpty(belief.Explanations);
    }
}
