using Undercowl.Diagnosis.Tests.Fixtures;
using Xunit;

namespace Undercowl.Diagnosis.Tests.Scenarios;

/// <summary>What the plugs tell: a white one, and an oily one that means other things on two strokes than on four.</summary>
public sealed class PlugReadingTests
{
    [Theory]
    [InlineData("two-stroke-3-cdi", "carburettor@cyl:2.jets=part-blocked", "crankcase-seal@cyl:2.*", "reed-valve@cyl:2.*")]
    [InlineData("four-stroke-4-inductive", "injector@cyl:2.spray=part-blocked", "intake-joint@cyl:2.*")]
    public void One_white_plug_with_good_spark_means_that_cylinder_runs_lean_and_the_warning_says_what_that_does(string layout, params string[] lean)
    {
        var story = Shop.Story(layout, "misses");
        story
            .FindAll("spark-to-ground", "always", story.Cylinders)
            .FindAll("plug-deposit", "tan", story.Cylinders.Where(c => c != 2))
            .Find("plug-deposit", "white", "cyl:2");
        Verdict.Is(story, lean);
        var white = story.Causes.Single(c => c.Cause == "spark-plug@cyl:2.deposit=white");
        Assert.True(white.AsFound > 0.5);
        Assert.Contains("can cost the engine", white.Warning, StringComparison.Ordinal);
        story.Proposes(1, p => p.Place == "cyl:2", "something in cylinder 2");
        Assert.DoesNotContain(story.Next(5), p => p.Id.Contains("coil", StringComparison.Ordinal) || p.Id.Contains("unit", StringComparison.Ordinal) || p.Id.Contains("trigger", StringComparison.Ordinal));
    }

    [Fact]
    public void An_oily_plug_is_a_dead_or_weak_lane_on_the_two_stroke_and_worn_metal_on_the_four_stroke()
    {
        var two = Kinds(OneOily("two-stroke-3-cdi"));
        var four = Kinds(OneOily("four-stroke-4-inductive"));
        Assert.Empty(two.Intersect(four));
        // An idle cylinder does not burn its oil: whatever stops it wets the plug. No stem seals on a two-stroke.
        Assert.All(two, kind => Assert.Contains(kind, (string[])["ignition-coil.winding", "plug-lead.seating", "trigger.winding", "control-unit.output", "coil-ground.bond", "spark-plug.insulator", "oil-mix.ratio", "cylinder.liquid"]));
        Assert.All(four, kind => Assert.Contains(kind, (string[])["piston-rings.seal", "piston-rings.oil-control", "valves.stem-seals", "cylinder.liquid"]));

        static string[] Kinds(Story story) => [.. story.Causes
            .Where(c => !c.Consequence)
            .OrderByDescending(c => c.AsFound)
            .Take(3)
            .Select(c => $"{c.Part}.{c.Aspect}")];
    }

    [Fact]
    public void On_the_two_stroke_next_is_the_spark_of_that_cylinder_and_on_the_four_stroke_a_known_good_plug_and_compression()
    {
        var two = OneOily("two-stroke-3-cdi");
        Assert.All(two.Next(3), p => Assert.True(p.Place == "cyl:3" && (p.Id.Contains("spark", StringComparison.Ordinal) || p.Id.StartsWith("known-good-plug", StringComparison.Ordinal)), p.Id));

        var four = OneOily("four-stroke-4-inductive");
        four.Proposes(1, p => p.Place == "cyl:3" && p.Id.StartsWith("known-good-plug", StringComparison.Ordinal), "a known-good plug in cylinder 3");
        four.Proposes(6, p => p.Place == "cyl:3" && p.Id.StartsWith("compression", StringComparison.Ordinal), "compression of cylinder 3");
        Assert.DoesNotContain(four.Next(2), p => p.Id == "replace-plug"); // a new plug alone will foul again
    }

    private static Story OneOily(string layout)
    {
        var story = Shop.Story(layout, "misses");
        return story.FindAll("plug-deposit", "tan", story.Cylinders.Where(c => c != 3)).Find("plug-deposit", "oily", "cyl:3");
    }
}
