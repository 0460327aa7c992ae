using Undercowl.Diagnosis.Tests.Fixtures;
using Undercowl.Jobs;
using Xunit;

namespace Undercowl.Diagnosis.Tests.Scenarios;

/// <summary>Fuel vapour keeps sparks and cranking back, and nothing ends while the engine is not as it was.</summary>
public sealed class SafetyTests
{
    [Theory]
    [InlineData("two-stroke-3-cdi")]
    [InlineData("four-stroke-4-inductive")]
    public void Nothing_recorded_about_smell_withholds_cranking_and_spark_and_smelling_comes_first(string layout)
    {
        var story = new Story(Shop.Workbench, layout, "no-start");
        AllWithheld(story);
        Assert.Equal("fuel-smell", story.Next()[0].Id);
    }

    [Theory]
    [InlineData("two-stroke-3-cdi")]
    [InlineData("four-stroke-4-inductive")]
    public void Smell_recorded_withholds_them_until_every_condition_is_met(string layout)
    {
        var story = new Story(Shop.Workbench, layout, "no-start").Find("fuel-smell", "strong");
        AllWithheld(story);
        var conditions = story.Diagnosis.Interlocks.Single(i => i.Interlock.Id == "fuel-vapour").Missing.Select(m => m.Id).ToArray();
        Assert.Equal(4, conditions.Length);
        for (var met = 1; met <= conditions.Length; met++)
        {
            Assert.Equal("make-safe", story.Next()[0].Kind);
            story.Record(new Interlock(conditions[met - 1], "met"));
            if (met < conditions.Length)
            {
                AllWithheld(story);
                Assert.Equal(conditions[met..], story.Diagnosis.Interlocks.Single(i => i.Interlock.Id == "fuel-vapour").Missing.Select(m => m.Id));
            }
        }

        Assert.Contains(story.Next(8), p => p.SetUp.GetValueOrDefault("engine") is "cranking" or "key-held");
    }

    [Fact]
    public void A_smell_of_fuel_comes_before_everything_and_nothing_is_done_to_battery_or_starter()
    {
        var story = new Story(Shop.Workbench, "two-stroke-3-cdi", "no-start")
            .Find("fuel-smell", "none").Find("battery-rest-volts", "11.9V").Find("battery-cranking-volts", "8.6V").Find("cranking-rpm", "140rpm").Find("tank-level", "enough");
        string[] forbidden = ["charge-battery", "replace-battery", "clean-terminals", "replace-solenoid", "clear-flood", "battery-rest-volts"];
        Assert.Contains(story.Next(40), p => forbidden.Contains(p.Id));
        story.Find("fuel-smell", "strong");
        Assert.Equal("make-safe", story.Next(40)[0].Kind);
        Assert.DoesNotContain(story.Next(40), p => forbidden.Contains(p.Id));
        Assert.Contains(story.Diagnosis.Next(3).Withheld, w => w.Kind == "remedy" && w.Id == "replace-battery");
        story.Remedy("replace-battery");
        Assert.Contains(story.Warnings, w => w.Contains("withheld", StringComparison.Ordinal));
    }

    [Fact]
    public void Fuel_squirted_in_by_hand_wants_the_air_smelt_again()
    {
        var story = Shop.Story("two-stroke-3-cdi", "no-start");
        Assert.True(Vapour().Clear);
        story.Find("fires-on-hand-fuel", "fires");
        Assert.False(Vapour().Clear);
        story.Find("fuel-smell", "none").Find("tank-level", "enough");
        Assert.True(Vapour().Clear);

        Undercowl.Diagnosis.Safety.InterlockStatus Vapour() => story.Diagnosis.Interlocks.Single(i => i.Interlock.Id == "fuel-vapour");
    }

    /// <summary>Jobs keep the ids of their day: what was recorded under a name that has changed since opens, clears and doubts as under the new one.</summary>
    [Fact]
    public void What_was_recorded_under_a_name_that_has_changed_since_counts_for_the_interlocks()
    {
        var renamed = Shop.Knowledge with
        {
            Aliases = new() { ["smell-of-fuel"] = "fuel-smell", ["dry-out"] = "clear-flood", ["sample-of-fuel"] = "fuel-sample", ["before-it-failed"] = "last-thing-done" },
        };
        bool Clear(Story story, string interlock) => story.Diagnosis.Interlocks.Single(i => i.Interlock.Id == interlock).Clear;

        var story = Shop.Story(renamed, "two-stroke-3-cdi", "no-start");
        Assert.True(Clear(story, "fuel-vapour") && Clear(story, "liquid-in-cylinder"));
        Assert.False(Clear(new Story(story, story.Job).Record(Old(story, "sample-of-fuel", "clean")), "fuel-vapour"));
        Assert.False(Clear(new Story(story, story.Job).Record(Old(story, "smell-of-fuel", "strong")), "fuel-vapour"));
        Assert.False(Clear(new Story(story, story.Job).Record(new Intake("before-it-failed", "sank")), "liquid-in-cylinder"));
        var worked = new Story(story, story.Job).Record(new Remedy("dry-out", 1, Place.Parse("engine")));
        Assert.False(Clear(worked, "fuel-vapour"));
        Assert.DoesNotContain(worked.Diagnosis.Interlocks.Single(i => i.Interlock.Id == "fuel-vapour").Missing, m => m.Id == "cylinders-cleared");

        static Finding Old(Story story, string check, string choice) =>
            new(check, 1, Place.Parse("engine"), new Dictionary<string, string>(), story.Job.Entries[^1].Id.ToString(), "technician", new ChoiceReading(choice));
    }

    [Fact]
    public void A_remedy_done_under_a_name_that_has_changed_since_is_not_proposed_again_until_something_shows_what_came_of_it()
    {
        var renamed = Shop.Knowledge with { Aliases = new() { ["fit-plug"] = "replace-plug" } };
        var story = Shop.Story(renamed, "two-stroke-3-cdi", "misses").FindAll("spark-to-ground", "always", [1, 2, 3]).Find("plug-electrodes", "rounded", "cyl:2").Find("known-good-plug-fires", "fires", "cyl:2");
        Assert.Contains(story.Next(8), p => p.Id == "replace-plug" && p.Place == "cyl:2");
        var before = story.Now("spark-plug@cyl:2.electrodes=worn");
        story.Record(new Remedy("fit-plug", 1, Place.Parse("cyl:2")));
        Assert.True(story.Now("spark-plug@cyl:2.electrodes=worn") < before / 10);
        Assert.DoesNotContain(story.Next(8), p => p.Id == "replace-plug" && p.Place == "cyl:2");
        Assert.Contains(story.Diagnosis.Next(1).Unavailable, u => u.Id == "replace-plug" && u.Place == "cyl:2");
    }

    [Fact]
    public void A_reading_that_takes_the_stop_wire_for_joined_does_not_join_it()
    {
        var story = Shop.Story("two-stroke-3-cdi", "no-start").Find("spark-stop-wire-off", "always", "cyl:1").Find("starting-test", "runs-well");
        var item = Assert.Single(story.Diagnosis.Restore, r => r.Key == "stop-wire");
        Assert.Contains("took for undone", item.What, StringComparison.Ordinal);
        Assert.Contains(story.Diagnosis.Proof().Missing, m => m.Contains(item.What, StringComparison.Ordinal));
        story.SetUp("stop-wire", "on");
        Assert.DoesNotContain(story.Diagnosis.Restore, r => r.Key == "stop-wire");
    }

    [Fact]
    public void A_condition_that_is_not_known_is_not_met_and_one_taken_back_withholds_again()
    {
        var story = new Story(Shop.Workbench, "two-stroke-3-cdi", "no-start").Find("fuel-smell", "strong");
        var conditions = story.Diagnosis.Interlocks.Single(i => i.Interlock.Id == "fuel-vapour").Missing.Select(m => m.Id).ToArray();
        foreach (var condition in conditions)
        {
            story.Record(new Interlock(condition, "unknown"));
        }

        AllWithheld(story);
        foreach (var condition in conditions)
        {
            story.Record(new Interlock(condition, Interlock.Met));
        }

        Assert.True(story.Diagnosis.Interlocks.Single(i => i.Interlock.Id == "fuel-vapour").Clear);
        story.Record(new Interlock(conditions[0], "unknown"));
        AllWithheld(story);
    }

    [Fact]
    public void Opening_the_fuel_system_asks_for_smelling_again_and_hearsay_does_not_clear()
    {
        var story = Shop.Story("two-stroke-3-cdi", "no-start").Find("fuel-sample", "clean");
        AllWithheld(story);
        Assert.Equal("fuel-smell", story.Next()[0].Id);
        AllWithheld(story.Find(new SaidFinding("fuel-smell", "none") { Hearsay = true }));
        Assert.True(story.Find("fuel-smell", "none").Diagnosis.Interlocks.Single(i => i.Interlock.Id == "fuel-vapour").Clear);
    }

    [Fact]
    public void Water_in_one_cylinder_withholds_every_test_that_cranks_with_plugs_in()
    {
        var story = Shop.Story("two-stroke-3-cdi", "no-start").Find("plug-wetness", "water", "cyl:2");
        Assert.DoesNotContain(story.Diagnosis.Next(200).Proposals, p => p.SetUp.GetValueOrDefault("engine") is "cranking" or "key-held" && p.SetUp.GetValueOrDefault("plugs") != "out");
    }

    [Theory]
    [InlineData("0mm")]
    [InlineData("99mm")]
    public void A_gap_that_no_law_reaches_is_refused_with_its_range_and_nothing_is_recorded(string gap)
    {
        var story = Shop.Story("two-stroke-3-cdi", "no-start");
        var before = story.Job.Count;
        var refused = Assert.Throws<DiagnosisException>(() => story.Find("spark-to-ground", "always", "cyl:1", ("gap", gap)));
        Assert.Contains("must be from", refused.Message, StringComparison.Ordinal);
        Assert.Equal(before, story.Job.Count);
    }

    [Theory]
    [InlineData("-200", "°C")]
    [InlineData("2000", "°C")]
    public void Air_that_cannot_be_is_refused_and_in_an_old_log_says_nothing(string degrees, string unit)
    {
        var air = new Ambient(new Measured(DecimalText.Parse(degrees), unit));
        Assert.Contains("must be from", Assert.Throws<DiagnosisException>(() => Drafting.Air(air)).Message, StringComparison.Ordinal);
        var story = Shop.Story("two-stroke-3-cdi", "no-start").Record(air).Find("spark-to-ground", "never", "cyl:1");
        Assert.Equal(
            Shop.Story("two-stroke-3-cdi", "no-start").Find("spark-to-ground", "never", "cyl:1").AsFound("ignition-coil@cyl:1.winding=open"),
            story.AsFound("ignition-coil@cyl:1.winding=open"),
            12);
    }

    [Theory]
    [InlineData("two-stroke-3-cdi", "ignition-coil@cyl:1.winding=open")]
    [InlineData("four-stroke-4-inductive", "double-coil@pair:1+4.winding=open")]
    public void A_withheld_check_that_was_done_anyway_is_recorded_with_a_warning(string layout, string cause)
    {
        var story = new Story(Shop.Workbench, layout, "no-start").Find("fuel-smell", "strong").Find("spark-to-ground", "never", "cyl:1");
        Assert.Contains(story.Warnings, w => w.Contains("withheld", StringComparison.Ordinal));
        var finding = Assert.IsType<Finding>(story.Job.Entries[^1].Body);
        Assert.Equal(["fuel-vapour"], finding.Against);
        Assert.True(story.AsFound(cause) > Shop.Story(layout, "no-start").AsFound(cause), "it counts as evidence all the same");
    }

    [Fact]
    public void Sign_off_is_refused_while_the_stop_wire_is_off_or_parts_stand_swapped_and_each_is_named()
    {
        var story = Shop.Story("two-stroke-3-cdi", "no-start")
            .Find("spark-stop-wire-off", "always", "cyl:1")
            .Swap("ignition-coil", "cyl:1", "cyl:3");
        IsRefused(story, "stop wire", "ignition coil");
        story.SetUp("stop-wire", "on").Swap("ignition-coil", "cyl:1", "cyl:3");
        NothingIsToUndo(story);
    }

    [Fact]
    public void On_the_four_stroke_sign_off_is_refused_while_a_known_good_plug_is_in_or_coils_stand_swapped_and_each_is_named()
    {
        var story = Shop.Story("four-stroke-4-inductive", "misses")
            .Find("known-good-plug-run", "runs-rough", "cyl:2")
            .Swap("double-coil", "pair:1+4", "pair:2+3");
        IsRefused(story, "known-good plug", "coil");
        story.SetUp("known-good-plug@cyl:2", "no").Swap("double-coil", "pair:1+4", "pair:2+3");
        NothingIsToUndo(story);
    }

    private static void IsRefused(Story story, params string[] named)
    {
        var proof = story.Diagnosis.Proof();
        Assert.False(proof.Proven);
        Assert.All(named, n => Assert.Single(proof.Missing, m => m.Contains(n, StringComparison.OrdinalIgnoreCase) && m.Contains("undo", StringComparison.Ordinal)));
    }

    private static void NothingIsToUndo(Story story)
    {
        Assert.Empty(story.Diagnosis.Restore);
        Assert.DoesNotContain(story.Diagnosis.Proof().Missing, m => m.Contains("undo", StringComparison.Ordinal));
    }

    private static void AllWithheld(Story story)
    {
        var next = story.Diagnosis.Next(200);
        Assert.DoesNotContain(next.Proposals, p => p.SetUp.GetValueOrDefault("engine") is "cranking" or "key-held" or "running");
        Assert.Contains(next.Withheld, w => w.Id == "spark-to-ground");
        Assert.Contains(next.Withheld, w => w.Id == "cranking-rpm");
        Assert.Contains(next.Withheld, w => w.Id == "battery-cranking-volts");
    }

    [Theory]
    [InlineData("two-stroke-3-cdi")]
    [InlineData("four-stroke-4-inductive")]
    public void In_a_strong_smell_no_battery_clamp_is_touched_either(string layout)
    {
        var story = new Story(Shop.Workbench, layout, "no-start").Find("fuel-smell", "strong");
        string[] warnOfSparks = [.. Shop.Knowledge.Cautions.Where(c => c.Hazard is not null).Select(c => c.Id)];
        Assert.NotEmpty(warnOfSparks);
        var proposed = story.Next(200);
        Assert.DoesNotContain(proposed, p => p.Cautions.Any(c => warnOfSparks.Contains(c.Id)));
        Assert.DoesNotContain(proposed, p => p.Id is "terminals-look" or "unit-ground-drop" or "key-switch-run" or "lanyard-switch-test" or "main-plug-stop-pin" or "battery-rest-volts");
        Assert.Contains(story.Diagnosis.Next(1).Withheld, w => w.Id == "terminals-look");
    }

    [Fact]
    public void With_the_timing_belt_broken_it_is_not_even_turned_by_hand_and_each_danger_found_is_told_first()
    {
        var story = Shop.Story("four-stroke-4-inductive", "no-crank").Find("timing-belt-look", "broken").Find("turn-by-hand", "locked");
        Assert.Contains(story.Warnings, w => w.Contains("Valves and pistons may meet", StringComparison.Ordinal));
        var steps = story.Next(6);
        Assert.Equal(["engine-locked", "timing-belt-failed"], steps.Take(2).Select(p => p.Id).Order());
        Assert.All(steps.Take(2), p => Assert.Equal("make-safe", p.Kind));
        Assert.DoesNotContain(story.Next(200), p => p.Id is "turn-by-hand" or "drain-cylinder");
    }
}
