using Undercowl.Diagnosis.Beliefs;
using Undercowl.Diagnosis.Tests.Fixtures;
using Xunit;

namespace Undercowl.Diagnosis.Tests.Scenarios;

/// <summary>Rules of thumb of the trade (common practice, no source) that no other scenario holds; oil and white tips are in <see cref="PlugReadingTests"/>, a good supply with a poor plug in <see cref="OrangeAtThePlugTests"/>.</summary>
public sealed class RulesOfThumbTests
{
    [Theory]
    [InlineData("two-stroke-3-cdi")]
    [InlineData("four-stroke-4-inductive")]
    public void The_wider_the_gap_that_is_still_jumped_the_healthier_the_supply(string layout)
    {
        var coil = layout == "two-stroke-3-cdi" ? "ignition-coil@cyl:2.winding=weak" : "double-coil@pair:2+3.winding=weak";
        double[] weak = [.. ((string[])["3mm", "6mm", "9mm", "12mm"]).Select(gap => Shop.Story(layout, "misses").Find("spark-to-ground", "always", "cyl:2", ("gap", gap)).AsFound(coil))];
        Assert.Equal(weak.OrderDescending(), weak);
        Assert.True(weak[^1] < weak[0] / 4);
    }

    [Fact]
    public void All_cylinders_are_tested_before_a_verdict_so_one_that_is_dead_buys_no_coil()
    {
        var story = Shop.Story("two-stroke-3-cdi", "misses").Find("spark-to-ground", "never", "cyl:1");
        Assert.DoesNotContain(story.Next(3), p => p.Kind == "remedy" && p.Id.Contains("coil", StringComparison.Ordinal));
    }

    [Fact]
    public void Dry_carbon_on_every_plug_is_too_rich_or_a_blocked_intake_which_comes_to_the_same()
    {
        string[] rich = ["air-intake@engine.passage=blocked", "starting-enrichment@engine.action=stuck-on"];
        var before = Shop.Story("two-stroke-3-cdi", "misses");
        var after = Shop.Story("two-stroke-3-cdi", "misses");
        after.FindAll("plug-deposit", "sooty", after.Cylinders);
        double[] weights = [.. rich.Select(c => Decibans.Of(after.AsFound(c)) - Decibans.Of(before.AsFound(c)))];
        Assert.All(weights, w => Assert.True(w > 5, $"{w:0.0} dB"));
        Assert.Equal(weights[0], weights[1], 1.0);
    }

    [Fact]
    public void The_grounded_plug_wants_bare_metal_no_vapour_and_distance_from_the_open_hole()
    {
        var check = Shop.Knowledge.Checks.First(c => c.Id == "plug-own-spark");
        Assert.All((string[])["spark-away-from-holes", "open-plug-holes"], c => Assert.Contains(c, check.Cautions));
        Assert.Contains(check.Steps, s => s.Contains("bare metal", StringComparison.Ordinal) && s.Contains("away from the hole", StringComparison.Ordinal));
        var unsmelt = new Story(Shop.Workbench, "two-stroke-3-cdi", "no-start");
        Assert.Contains(unsmelt.Diagnosis.Next(1).Withheld, w => w.Id == check.Id);
    }

    /// <summary>The gap is gauged whenever the plug is out: the work is shared with every look at the plug.</summary>
    [Fact]
    public void A_plug_that_is_out_is_gauged_at_little_cost_and_a_new_one_is_gauged_and_turned_in_by_hand_first()
    {
        var looks = Shop.Knowledge.Checks.Where(c => c.Id is "plug-gap" or "plug-deposit" or "plug-electrodes" or "plug-insulator" or "plug-wetness").ToArray();
        Assert.Equal(5, looks.Length);
        Assert.Single(looks.Select(c => c.Cluster).Distinct());
        var steps = string.Join(' ', Shop.Knowledge.Remedies.First(r => r.Id == "replace-plug").Steps);
        Assert.All((string[])["gap gauged", "By hand first, never cross-threaded", "a quarter to three quarters of a turn", "a used one far less", "torque figure rules"], rule => Assert.Contains(rule, steps, StringComparison.Ordinal));
    }

    [Fact]
    public void Grease_in_the_cap_and_anti_seize_on_the_thread_only_as_the_maker_says_and_of_a_marine_grade()
    {
        string Steps(string remedy) => string.Join(' ', Shop.Knowledge.Remedies.First(r => r.Id == remedy).Steps);
        Assert.All((string[])["replace-plug", "clean-plug", "tighten-plug"], r => Assert.Contains("Anti-seize on the thread only where the engine's maker asks for it, of a marine grade", Steps(r), StringComparison.Ordinal));
        Assert.All((string[])["seat-plug-lead", "replace-plug-cap", "replace-plug-lead"], r => Assert.Contains("Grease in the boot only as the maker says, of a marine grade", Steps(r), StringComparison.Ordinal));
    }
}
