using Undercowl.Diagnosis.Tests.Fixtures;
using Xunit;

namespace Undercowl.Diagnosis.Tests.Scenarios;

/// <summary>A part is replaced and the engine is as dead as before.</summary>
public sealed class RepairedAndStillDeadTests
{
    [Fact]
    public void Now_moves_on_and_as_found_keeps_its_account()
    {
        const string Winding = "ignition-coil@cyl:2.winding=open";
        var before = OneDead();
        var asFound = before.AsFound(Winding);
        var story = OneDead().Remedy("replace-ignition-coil", "cyl:2");
        Assert.True(story.Now(Winding) < 0.05);
        Assert.Equal(asFound, story.AsFound(Winding), 9);

        story.Find("spark-to-ground", "never", "cyl:2");
        Assert.True(story.AsFound(Winding) < asFound / 3, "that a new coil changed nothing acquits the old one");
        Assert.True(story.AsFound(Winding) > 0, "but not wholly: the new one may be bad too");
        Assert.True(story.Now(Winding) > 0.002, "a replacement can itself be bad");
        Assert.NotEqual("ignition-coil", Leader(story));
        Assert.DoesNotContain(story.Next(6), p => p.Id == "replace-ignition-coil");
    }

    [Fact]
    public void It_is_proposed_again_when_there_is_reason_because_the_new_part_is_seen_to_be_bad()
    {
        var story = OneDead()
            .Remedy("replace-ignition-coil", "cyl:2")
            .Find("spark-to-ground", "never", "cyl:2")
            .Swap("ignition-coil", "cyl:2", "cyl:3")
            .Find("spark-to-ground", "always", "cyl:2")
            .Find("spark-to-ground", "never", "cyl:3")
            .Find("spark-to-ground", "never", "cyl:3", ("gap", "5mm"));
        Assert.True(story.Now("ignition-coil@cyl:2.winding=open") > 0.5);
        story.Proposes(6, p => p.Id == "replace-ignition-coil" && p.Place == "cyl:3", "another new coil where the bad new one now sits");
    }

    [Fact]
    public void On_the_four_stroke_a_new_crank_sensor_that_changes_nothing_moves_belief_to_the_rest_of_what_all_cylinders_share()
    {
        var story = Shop.Story("four-stroke-4-inductive", "no-start").Find("cranking-by-ear", "brisk");
        story.FindAll("spark-to-ground", "never", story.Cylinders).Find("crank-sensor-ohms", "open");
        Assert.Equal("crank-sensor", Leader(story));
        story.Remedy("replace-crank-sensor").FindAll("spark-to-ground", "never", story.Cylinders);
        Assert.NotEqual("crank-sensor", Leader(story));
        Assert.DoesNotContain(story.Next(6), p => p.Id == "replace-crank-sensor");
    }

    /// <summary>The part most believed to be at fault now.</summary>
    private static string Leader(Story story) => story.Causes.First(c => !c.Consequence).Part;

    private static Story OneDead() => Shop.Story("two-stroke-3-cdi", "misses")
        .FindAll("spark-to-ground", "always", [1, 3])
        .Find("spark-to-ground", "never", "cyl:2")
        .Find("spark-wiggle", "never", "cyl:2");
}
