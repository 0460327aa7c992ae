using Undercowl.Diagnosis.Beliefs;
using Undercowl.Diagnosis.Tests.Fixtures;
using Undercowl.Jobs;
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

    /// <summary>Kill switch, fuel in the tank, loose connection, fuse: each first proposal answered as found in order, the looks are the first five, and no tool is taken in hand before.</summary>
    [Theory]
    [InlineData("two-stroke-3-cdi", "lanyard-clip=home", "tank-level=enough", "tank-vent-open=open", "terminals-look=clean")]
    [InlineData("four-stroke-4-inductive", "lanyard-clip=home", "tank-level=enough", "tank-vent-open=open", "terminals-look=clean", "unit-fuse-look=whole")]
    public void Before_any_of_it_kill_switch_fuel_loose_connection_and_fuse(string layout, params string[] looks)
    {
        var story = Shop.Story(layout, "no-start");
        var found = looks.Select(l => l.Split('=')).ToDictionary(l => l[0], l => l[1]);
        var open = found.Keys.ToHashSet();
        while (open.Count > 0)
        {
            var first = story.Next(1)[0];
            Assert.True(open.Remove(first.Id), $"{first.Id} before {string.Join(", ", open)}");
            story.Find(first.Id, found[first.Id], first.Place);
        }

        Assert.True(looks.Length <= 5);
    }

    [Fact]
    public void What_the_interview_speaks_against_is_looked_at_later_and_once_a_tool_is_in_hand_looks_have_no_claim_of_their_own()
    {
        Assert.Equal("tank-level", Shop.Story("two-stroke-3-cdi", "no-start").Find("lanyard-clip", "home", "side:boat").Next(1)[0].Id);
        // Filled up just before it is hardly empty, and its vent is as likely shut.
        var filled = Shop.Story("two-stroke-3-cdi", "no-start").Record(new Intake("last-thing-done", "refuelled")).Find("lanyard-clip", "home", "side:boat");
        Assert.Equal("tank-vent-open", filled.Next(1)[0].Id);

        var measured = Shop.Story("two-stroke-3-cdi", "no-start").FindAll("spark-to-ground", "always", [1, 2, 3]);
        Assert.DoesNotContain(measured.Next(1), p => p.Id is "lanyard-clip" or "terminals-look");
    }

    /// <summary>No spark on any, the ground not proven: that is often a clip on paint. One that sparks proves it.</summary>
    [Fact]
    public void The_testers_ground_is_proven_where_the_pattern_smells_of_it()
    {
        var story = Shop.Story("two-stroke-3-cdi", "no-start").Find("battery-cranking-volts", "11.0 V", "side:boat").Find("cranking-rpm", "320 rpm");
        Assert.DoesNotContain(story.Next(5), p => p.Id == "tester-earth");
        new Story(story, story.Job).FindAll("spark-to-ground", "never", [1, 2, 3]).ProposesSoon("tester-earth");
        Assert.DoesNotContain(new Story(story, story.Job).FindAll("spark-to-ground", "always", [1, 3]).Find("spark-to-ground", "never", "cyl:2").Next(8), p => p.Id == "tester-earth");
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
