using Undercowl.Diagnosis.Tests.Fixtures;
using Xunit;

namespace Undercowl.Diagnosis.Tests.Scenarios;

/// <summary>Every cylinder jumps 5 mm and none jumps 11 mm, and the engine cranks slowly: supply or cranking, not the plugs.</summary>
public sealed class WeakSparkTests
{
    private static readonly string[] Cranking =
    [
        "battery@side:boat.*", "battery-terminals@side:boat.*", "positive-cable@side:boat.*", "negative-cable@side:boat.*", "starter-motor@engine.*", "rotating-group@engine.*",
    ];

    [Theory]
    [InlineData("two-stroke-3-cdi")]
    [InlineData("four-stroke-4-inductive")]
    public void It_is_the_supply_or_the_cranking_and_next_the_volts_are_measured(string layout)
    {
        var story = Shop.Story(layout, "no-start").Find("cranking-by-ear", "slow");
        story.FindAll("spark-to-ground", "always", story.Cylinders, ("gap", "5mm")).FindAll("spark-to-ground", "never", story.Cylinders, ("gap", "11mm"));
        Verdict.Is(story, Cranking);
        story.ProposesFirst("battery-rest-volts", "battery-cranking-volts", "positive-drop", "ground-drop");
        Assert.DoesNotContain(story.Next(5), p => p.Id is "plug-gap" or "plug-electrodes" or "replace-plug" or "known-good-plug-spark");
    }

    [Fact]
    public void At_normal_speed_the_same_readings_mean_a_weak_charge_or_control_unit()
    {
        var story = Shop.Story("two-stroke-3-cdi", "no-start").Find("cranking-by-ear", "brisk").Find("cranking-rpm", "320rpm");
        story.FindAll("spark-to-ground", "always", story.Cylinders, ("gap", "5mm")).FindAll("spark-to-ground", "never", story.Cylinders, ("gap", "11mm"));
        Verdict.Is(
            story,
            "charge-coil@engine.*", "charge-connector@engine.*", "control-unit@engine.electronics=*", "unit-ground@engine.*", "flywheel-magnets@engine.*");
    }
}
