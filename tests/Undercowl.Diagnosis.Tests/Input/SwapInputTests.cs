using Undercowl.Diagnosis.Tests.Fixtures;
using Undercowl.Jobs;
using Xunit;

namespace Undercowl.Diagnosis.Tests.Input;

/// <summary>Only what an engine has twice is exchanged, and a part is not exchanged with itself.</summary>
public sealed class SwapInputTests
{
    [Theory]
    [InlineData("two-stroke-3-cdi", "charge-coil", "cyl:1", "cyl:2")]
    [InlineData("two-stroke-3-cdi", "charge-coil", "engine", "engine")]
    [InlineData("two-stroke-3-cdi", "trigger", "engine", "engine")]
    [InlineData("two-stroke-3-cdi", "trigger", "cyl:2", "cyl:2")]
    [InlineData("two-stroke-3-cdi", "ignition-coil", "cyl:1", "cyl:1")]
    [InlineData("two-stroke-3-cdi", "fuel-pump", "engine", "cyl:1")]
    [InlineData("rope-1-magneto", "spark-plug", "cyl:1", "cyl:1")]
    public void A_part_of_which_there_is_one_and_a_part_with_itself_are_refused(string layout, string part, string a, string b)
    {
        var story = Shop.Story(layout, "no-start");
        var before = story.Job.Count;
        Assert.Throws<DiagnosisException>(() => story.Swap(part, a, b));
        Assert.Equal(before, story.Job.Count);
    }

    [Fact]
    public void The_refusal_names_what_can_be_exchanged_and_nothing_else()
    {
        var refused = Assert.Throws<DiagnosisException>(() => Shop.Story("two-stroke-3-cdi", "no-start").Swap("charge-coil", "cyl:1", "cyl:2"));
        Assert.Contains("There is one charge coil on this engine", refused.Message, StringComparison.Ordinal);
        var named = refused.Message[refused.Message.IndexOf("These can be exchanged:", StringComparison.Ordinal)..];
        Assert.Contains("ignition-coil", named, StringComparison.Ordinal);
        Assert.Contains("control-unit", named, StringComparison.Ordinal);
        Assert.DoesNotContain("charge-coil", named, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("ignition-coil", "cyl:1", "cyl:3")]
    [InlineData("control-unit", "cyl:1", "cyl:2")]
    public void Like_parts_and_outputs_of_one_part_are_exchanged_and_stand_on_the_restore_list(string part, string a, string b) =>
        Assert.Contains(Shop.Story("two-stroke-3-cdi", "no-start").Swap(part, a, b).Diagnosis.Restore, r => r.Key == $"swap {part}@{(part == "control-unit" ? "engine" : a)}");

    [Fact]
    public void A_log_that_holds_an_exchange_of_nothing_is_not_kept_from_its_end_by_it()
    {
        var story = Shop.Story("two-stroke-3-cdi", "no-start").Record(new Swap("charge-coil", Place.Parse("cyl:1"), Place.Parse("cyl:2")));
        Assert.Empty(story.Diagnosis.Restore);
    }
}
