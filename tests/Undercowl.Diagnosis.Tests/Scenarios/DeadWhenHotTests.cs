using Undercowl.Diagnosis.Tests.Fixtures;
using Xunit;

namespace Undercowl.Diagnosis.Tests.Scenarios;

/// <summary>Spark in the morning, none when hot.</summary>
public sealed class DeadWhenHotTests
{
    [Theory]
    [InlineData("two-stroke-3-cdi")]
    [InlineData("four-stroke-4-inductive")]
    public void It_is_what_fails_by_heat(string layout)
    {
        var story = DeadHot(layout);
        Verdict.Is(story, layout == "two-stroke-3-cdi"
            ? ["charge-coil@engine.winding=open-hot", "control-unit@engine.electronics=dead-hot", "trigger@engine.common=open-hot"]
            : ["control-unit@engine.electronics=dead-hot", "crank-sensor@engine.winding=open-hot"]);
        // What tells them apart is asked while it is hot.
        Assert.Equal("hot", story.Next()[0].SetUp["heat"]);
    }

    [Theory]
    [InlineData("two-stroke-3-cdi", "charge-coil@engine.winding=open-hot")]
    [InlineData("four-stroke-4-inductive", "crank-sensor@engine.winding=open-hot")]
    public void When_it_sparks_again_cool_nothing_is_proven_and_the_fault_is_still_believed(string layout, string cause)
    {
        var story = DeadHot(layout);
        var hot = story.Now(cause);
        story.SetUp("heat", "cold").FindAll("spark-to-ground", "always", story.Cylinders).Find("starting-test", "runs-well");
        Assert.True(story.Now(cause) > hot * 0.8);
        var proof = story.Diagnosis.Proof();
        Assert.False(proof.Proven);
        Assert.Contains(proof.Missing, m => m.Contains("hot", StringComparison.Ordinal));
        Assert.True(proof.HealthyNow < 0.2);
    }

    [Fact]
    public void After_the_repair_a_cold_start_does_not_prove_it_and_a_hot_run_does()
    {
        var story = DeadHot("two-stroke-3-cdi").Find("charge-peak", "20V", null, ("heat", "hot"), ("stop-wire", "on"));
        story.Remedy("replace-charge-coil", "engine").SetUp("heat", "cold").SetUp("stop-wire", "on").Find("starting-test", "runs-well");
        Assert.False(story.Diagnosis.Proof().Proven);
        story.Find("hot-run-test", "runs-well").Find("telltale", "strong").Find("stops-shown", "all-work");
        var proof = story.Diagnosis.Proof();
        Assert.True(proof.Proven, string.Join(Environment.NewLine, proof.Missing));
    }

    private static Story DeadHot(string layout)
    {
        var story = Shop.Story(layout, "dies-hot");
        story
            .FindAll("spark-to-ground", "always", story.Cylinders)
            .FindAll("spark-to-ground", "never", story.Cylinders, ("heat", "hot"))
            .Find("lanyard-clip", "home");
        return layout == "two-stroke-3-cdi"
            ? story.FindAll("spark-stop-wire-off", "never", [1, 2])
            : story.Find("unit-supply-volts", "12.2V");
    }
}
