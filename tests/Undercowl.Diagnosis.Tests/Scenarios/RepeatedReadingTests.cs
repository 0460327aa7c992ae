using Undercowl.Diagnosis.Beliefs;
using Undercowl.Diagnosis.Tests.Fixtures;
using Xunit;

namespace Undercowl.Diagnosis.Tests.Scenarios;

/// <summary>The same reading again says little that the first did not.</summary>
public sealed class RepeatedReadingTests
{
    [Theory]
    [InlineData("two-stroke-3-cdi", "spark-to-ground", "never", "ignition-coil@cyl:2.winding=open")]
    [InlineData("two-stroke-3-cdi", "plug-own-spark", "none", "ignition-coil@cyl:2.winding=open")]
    [InlineData("two-stroke-3-cdi", "compression-dry", "250kPa", "piston-rings@cyl:2.seal=stuck")]
    [InlineData("two-stroke-3-cdi", "plug-electrodes", "rounded", "spark-plug@cyl:2.electrodes=worn")]
    [InlineData("four-stroke-4-inductive", "spark-to-ground", "never", "double-coil@pair:2+3/2.tower=broken-down")]
    [InlineData("four-stroke-4-inductive", "double-coil-secondary-ohms", "open", "double-coil@pair:2+3/2.tower=broken-down")]
    [InlineData("four-stroke-4-inductive", "compression-dry", "300kPa", "valves@cyl:2.seats=burnt")]
    public void Ten_equal_repeats_move_belief_less_than_3_dB_beyond_the_first(string layout, string check, string reading, string cause)
    {
        var place = check == "double-coil-secondary-ohms" ? "pair:2+3" : "cyl:2";
        var story = Shop.Story(layout, "misses").Find(check, reading, place);
        var once = Decibans.Of(story.AsFound(cause));
        for (var i = 0; i < 9; i++)
        {
            story.Find(check, reading, place);
        }

        Assert.InRange(Decibans.Of(story.AsFound(cause)) - once, -3, 3);
    }

    [Theory]
    [InlineData("two-stroke-3-cdi", "ignition-coil@cyl:2.winding=open")]
    [InlineData("four-stroke-4-inductive", "double-coil@pair:2+3/2.tower=broken-down")]
    public void Seven_of_one_and_three_of_another_leave_every_belief_finite(string layout, string cause)
    {
        var story = Shop.Story(layout, "misses");
        for (var i = 0; i < 10; i++)
        {
            story.Find("spark-to-ground", i % 3 == 1 ? "always" : "never", "cyl:2");
        }

        Assert.All(story.Causes, c => Assert.InRange(c.AsFound, 0, 1));
        Assert.InRange(story.AsFound(cause), 1e-6, 1 - 1e-6);
    }
}
