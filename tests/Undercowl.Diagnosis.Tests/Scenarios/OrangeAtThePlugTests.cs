using Undercowl.Diagnosis.Tests.Fixtures;
using Xunit;

namespace Undercowl.Diagnosis.Tests.Scenarios;

/// <summary>The spark is strong at the tester and orange at one plug, grounded: try a plug known to be good.</summary>
public sealed class OrangeAtThePlugTests
{
    [Theory]
    [InlineData("two-stroke-3-cdi")]
    [InlineData("four-stroke-4-inductive")]
    public void The_next_step_is_a_known_good_plug_in_that_cylinder(string layout)
    {
        var story = StrongAtTheTester(layout).Find("plug-own-spark", "orange", "cyl:2");
        story.Proposes(1, KnownGoodPlug, "a known-good plug in cylinder 2");
        AsksForNoSparkPart(story);
    }

    [Theory]
    [InlineData("two-stroke-3-cdi", "cut-out-shorted", "drops")]
    [InlineData("four-stroke-4-inductive", "cut-out-unplugged", "worse")]
    public void So_it_is_when_that_cylinder_is_known_not_to_work(string layout, string cutOut, string works)
    {
        var story = StrongAtTheTester(layout);
        story
            .FindAll(cutOut, works, story.Cylinders.Where(c => c != 2))
            .Find(cutOut, "same", "cyl:2")
            .Find("plug-own-spark", "orange", "cyl:2");
        Assert.Equal("spark-plug@cyl:2.insulator=cracked", story.Causes.Where(c => !c.Consequence).MaxBy(c => c.AsFound)!.Cause);
        story.Proposes(1, KnownGoodPlug, "a known-good plug in cylinder 2");
        AsksForNoSparkPart(story);
    }

    [Theory]
    [InlineData("two-stroke-3-cdi", "cut-out-shorted")]
    [InlineData("four-stroke-4-inductive", "cut-out-unplugged")]
    public void It_runs_well_on_the_known_good_plug_so_it_is_the_plug(string layout, string cutOut)
    {
        var story = StrongAtTheTester(layout).Find("plug-own-spark", "orange", "cyl:2").Find("known-good-plug-run", "runs-well", "cyl:2");
        story.Proposes(3, p => p.Id == "replace-plug" && p.Place == "cyl:2", "a new plug in cylinder 2");
        story.Find(cutOut, "same", "cyl:2", ("known-good-plug@cyl:2", "no"));
        Verdict.Is(story, "spark-plug@cyl:2.insulator=*", "spark-plug@cyl:2.electrodes=*", "spark-plug@cyl:2.deposit=*");
        story.ProposesFirst("replace-plug");
    }

    private static bool KnownGoodPlug(Answers.ProposedStep step) => step.Id.StartsWith("known-good-plug", StringComparison.Ordinal) && step.Place == "cyl:2";

    /// <summary>With the tester strong everywhere no new coil, lead, cap or unit is among the first steps.</summary>
    private static void AsksForNoSparkPart(Story story) =>
        Assert.DoesNotContain(story.Next(5), p => p.Kind == "remedy" && p.Id is not "replace-plug" && (p.Id.Contains("coil", StringComparison.Ordinal) || p.Id.Contains("plug-", StringComparison.Ordinal) || p.Id.Contains("unit", StringComparison.Ordinal)));

    private static Story StrongAtTheTester(string layout)
    {
        var story = Shop.Story(layout, "misses");
        return story.FindAll("spark-to-ground", "always", story.Cylinders);
    }
}
