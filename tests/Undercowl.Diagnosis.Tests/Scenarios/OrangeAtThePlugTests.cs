using Undercowl.Diagnosis.Tests.Fixtures;
using Xunit;

namespace Undercowl.Diagnosis.Tests.Scenarios;

/// <summary>A cylinder does not work, its spark is strong at the tester and orange at its own grounded plug: try a plug known to be good.</summary>
public sealed class OrangeAtThePlugTests
{
    [Theory]
    [InlineData("two-stroke-3-cdi", "cut-out-shorted", "drops")]
    [InlineData("four-stroke-4-inductive", "cut-out-unplugged", "worse")]
    public void The_next_step_is_a_known_good_plug_in_that_cylinder(string layout, string cutOut, string works)
    {
        var story = Shop.Story(layout, "misses");
        story
            .FindAll(cutOut, works, story.Cylinders.Where(c => c != 2))
            .Find(cutOut, "same", "cyl:2")
            .FindAll("spark-to-ground", "always", story.Cylinders)
            .Find("plug-own-spark", "orange", "cyl:2");
        Assert.Equal("spark-plug@cyl:2.insulator=cracked", story.Diagnosis.BeliefNow().Causes.Where(c => !c.Consequence).MaxBy(c => c.AsFound)!.Cause);
        story.Proposes(1, p => p.Id is "known-good-plug-fires" or "known-good-plug-spark" && p.Place == "cyl:2", "a known-good plug in cylinder 2");
    }
}
