using Undercowl.Diagnosis.Tests.Fixtures;
using Xunit;

namespace Undercowl.Diagnosis.Tests.Scenarios;

/// <summary>The engine does not crank: the volts at the battery with the key held tell an open path from a flat battery or a locked engine.</summary>
public sealed class DoesNotCrankTests
{
    private static readonly string[] Drawn = ["battery@side:boat.state=flat", "rotating-group@engine.freedom=locked"];

    private static readonly string[] OpenPath =
    [
        "main-fuse@engine.*", "neutral-switch@engine.*", "key-switch@side:boat.start-contact=*", "starter-motor@engine.motor=dead", "starter-solenoid@engine.*", "main-plug@engine.*",
        "battery-terminals@side:boat.contact=loose", "positive-cable@side:boat.path=open", "negative-cable@side:boat.path=open", "engine-harness@side:engine.feed-wire=*",
        "boat-harness@side:boat.feed-wire=*", "unlisted-shared@engine.starting=*",
    ];

    [Theory]
    [InlineData("two-stroke-3-cdi")]
    [InlineData("four-stroke-4-inductive")]
    public void Volts_that_stay_as_at_rest_mean_an_open_path_and_next_the_starting_circuit_is_followed(string layout)
    {
        var story = Shop.Story(layout, "no-crank").Find("battery-cranking-volts", "12.3V");
        Verdict.Is(story, OpenPath);
        StartingSteps(story);
        Assert.DoesNotContain(story.Next(8), p => p.Id is "charge-battery" or "replace-battery" or "booster-crank");
    }

    [Theory]
    [InlineData("two-stroke-3-cdi")]
    [InlineData("four-stroke-4-inductive")]
    public void Volts_that_fall_to_six_mean_a_flat_battery_or_a_locked_engine_and_next_it_is_turned_by_hand_or_the_battery_measured(string layout)
    {
        var story = Shop.Story(layout, "no-crank").Find("starter-sound", "clicks").Find("battery-cranking-volts", "6V");
        Verdict.Is(story, Drawn);
        StartingSteps(story);
        story.ProposesFirst("turn-by-hand", "battery-rest-volts", "booster-crank").Proposes(8, p => p.Id == "turn-by-hand", "turning it by hand");
        Assert.DoesNotContain(story.Next(8), p => p.Id is "replace-starter-motor");
    }

    [Theory]
    [InlineData("two-stroke-3-cdi")]
    [InlineData("four-stroke-4-inductive")]
    public void A_cranking_speed_of_nothing_is_believed_and_next_the_volts_or_the_sound_at_the_key(string layout)
    {
        var story = Shop.Story(layout, "no-crank").Find("cranking-rpm", "0 rpm");
        StartingSteps(story);
        story.ProposesFirst("battery-cranking-volts", "starter-sound", "battery-rest-volts");
    }

    /// <summary>No spark, fuel or compression is asked of an engine that does not turn.</summary>
    private static void StartingSteps(Story story) => Assert.All(story.Next(4), p => Assert.False(
        p.Id.Contains("spark", StringComparison.Ordinal) || p.Id.Contains("fuel", StringComparison.Ordinal) || p.Id.Contains("plug-", StringComparison.Ordinal)
        || p.Id.Contains("compression", StringComparison.Ordinal) || p.Id.Contains("cut-out", StringComparison.Ordinal) || p.Id.Contains("peak", StringComparison.Ordinal), p.Id));
}
