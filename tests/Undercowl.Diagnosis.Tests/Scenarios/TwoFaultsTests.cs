using Undercowl.Diagnosis.Tests.Fixtures;
using Xunit;

namespace Undercowl.Diagnosis.Tests.Scenarios;

/// <summary>Plugs worn everywhere and one open coil: two faults that have nothing to do with each other.</summary>
public sealed class TwoFaultsTests
{
    [Theory]
    [InlineData("two-stroke-3-cdi")]
    [InlineData("four-stroke-8-inductive")]
    public void Both_are_believed_and_both_stand_in_the_first_explanation(string layout)
    {
        var story = Shop.Story(layout, "misses");
        var measured = story.Cylinders.Take(4).ToArray();
        foreach (var cylinder in measured)
        {
            story.Find("plug-electrodes", "rounded", $"cyl:{cylinder}").Find("plug-gap", cylinder == 2 ? "1.55mm" : "1.6mm", $"cyl:{cylinder}");
        }

        story
            .FindAll("spark-to-ground", "always", measured.Where(c => c != 2))
            .Find("spark-to-ground", "never", "cyl:2")
            .Swap("ignition-coil", "cyl:2", "cyl:3")
            .Find("spark-to-ground", "always", "cyl:2")
            .Find("spark-to-ground", "never", "cyl:3");

        Verdict.Is(story, [.. measured.Select(c => $"spark-plug@cyl:{c}.electrodes=worn"), "ignition-coil@cyl:2.*"]);
        Assert.All(measured, c => Assert.True(story.AsFound($"spark-plug@cyl:{c}.electrodes=worn") > 0.8));
        Assert.True(story.AsFound("ignition-coil@cyl:2.winding=open") + story.AsFound("ignition-coil@cyl:2.winding=weak") > 0.9);
        var first = story.Diagnosis.BeliefNow().Explanations[0].Causes;
        Assert.Contains("ignition-coil@cyl:2.winding=open", first);
        Assert.All(measured, c => Assert.Contains($"spark-plug@cyl:{c}.electrodes=worn", first));
        Assert.Equal(measured.Length + 1, first.Count);
        story.Proposes(1, p => p.Place == "cyl:3", "something where the dead coil now sits");
        story.Proposes(8, p => p.Id is "re-gap-plug" or "replace-ignition-coil", "the gap set, or the coil replaced");
    }

    [Fact]
    public void On_double_ended_coils_worn_plugs_and_one_open_coil_are_both_believed_too()
    {
        var story = Shop.Story("four-stroke-4-inductive", "misses");
        foreach (var cylinder in story.Cylinders)
        {
            story.Find("plug-electrodes", "rounded", $"cyl:{cylinder}").Find("plug-gap", cylinder == 2 ? "1.55mm" : "1.6mm", $"cyl:{cylinder}");
        }

        story
            .FindAll("spark-to-ground", "always", [2, 3])
            .FindAll("spark-to-ground", "never", [1, 4])
            .Swap("double-coil", "pair:1+4", "pair:2+3")
            .FindAll("spark-to-ground", "always", [1, 4])
            .FindAll("spark-to-ground", "never", [2, 3]);
        Verdict.Is(story, "spark-plug@cyl:*.electrodes=worn", "double-coil@pair:1+4.*", "double-coil@pair:1+4/*");
        Assert.All(story.Cylinders, c => Assert.True(story.AsFound($"spark-plug@cyl:{c}.electrodes=worn") > 0.8));
        var first = story.Diagnosis.BeliefNow().Explanations[0].Causes;
        Assert.Contains("double-coil@pair:1+4.winding=open", first);
        Assert.All(story.Cylinders, c => Assert.Contains($"spark-plug@cyl:{c}.electrodes=worn", first));
    }
}
