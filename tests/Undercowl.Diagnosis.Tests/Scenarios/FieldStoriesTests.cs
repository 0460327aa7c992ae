using Undercowl.Diagnosis.Beliefs;
using Undercowl.Diagnosis.Tests.Fixtures;
using Undercowl.Jobs;
using Xunit;

namespace Undercowl.Diagnosis.Tests.Scenarios;

/// <summary>
/// Stories that a master technician holds the tool to, with their numbers: what must be believed, what comes next (within the first
/// two proposals unless a test says three) and what must not. The pattern is common practice; the shares asked for are judgement.
/// </summary>
public sealed class FieldStoriesTests
{
    private static readonly string[] StopCircuit =
        ["key-switch@side:boat.run-contact=*", "lanyard-switch@side:boat.*", "boat-harness@side:boat.stop-wire=*", "main-plug@engine.stop-pin=*", "engine-harness@side:engine.stop-wire=*"];

    private static readonly string[] CrankingPower =
        ["battery@side:boat.*", "battery-terminals@side:boat.*", "positive-cable@*", "negative-cable@*", "starter-motor@*", "starter-solenoid@*", "rotating-group@*"];

    [Fact]
    public void No_start_no_spark_on_three_first_the_stop_wire_off_then_the_harness_apart_then_the_wire_on_the_engine()
    {
        var story = NoSparkAtGoodSpeed();
        story.Proposes(2, p => p.Id == "spark-stop-wire-off", "the stop wire off");

        story.FindAll("spark-stop-wire-off", "always", [1, 2, 3]);
        Verdict.Is(story, StopCircuit);
        story.Proposes(2, p => p.Id == "spark-harness-apart", "the harness plug apart");
        Assert.Contains(story.Diagnosis.Proof().Missing, m => m.Contains("stop wire", StringComparison.OrdinalIgnoreCase));

        story.FindAll("spark-harness-apart", "never", [1]);
        Assert.InRange(story.AsFound("engine-harness@side:engine.stop-wire=grounded"), 0.8, 1);
        Mends(story, 3, "mend-engine-stop-wire");
        NoPart(story, "key-switch", "control-unit", "ignition-coil");
    }

    [Fact]
    public void With_the_stop_wire_off_one_is_still_dead_and_moves_with_its_coil_so_both_are_believed()
    {
        var story = NoSparkAtGoodSpeed()
            .FindAll("spark-stop-wire-off", "always", [1, 3])
            .Find("spark-stop-wire-off", "never", "cyl:2")
            .Swap("ignition-coil", "cyl:2", "cyl:3")
            .FindAll("spark-stop-wire-off", "always", [1, 2])
            .Find("spark-stop-wire-off", "never", "cyl:3");
        Assert.InRange(new Verdict(story.Diagnosis, StopCircuit).Named, 10 * Math.Log10(0.9 / 0.1), 100);
        Assert.InRange(new Verdict(story.Diagnosis, ["ignition-coil@cyl:2.winding=*"]).Named, 10 * Math.Log10(0.85 / 0.15), 100);
        story.Proposes(2, p => p.Id is "spark-harness-apart" or "replace-ignition-coil", "the harness apart, or that coil");
        NoPart(story, "trigger");
    }

    [Fact]
    public void Two_cylinders_that_share_a_coil_are_dead_so_it_is_that_coil_its_connector_feed_or_driver()
    {
        var story = Shop.Story("four-stroke-4-inductive", "misses").Find("battery-cranking-volts", "10.6 V", "side:boat")
            .FindAll("spark-to-ground", "never", [1, 4])
            .FindAll("spark-to-ground", "always", [2, 3]);
        Verdict.Is(story, "double-coil@pair:1+4.winding=*", "coil-connector@pair:1+4.*", "coil-driver@pair:1+4.*");
        // Looked at before it is taken apart for the exchange.
        var steps = story.Proposes(1, p => p.Id is "coil-connector-look" or "coil-feed-volts", "feed and connector").Next(2);
        Assert.Equal("pair-coil-swap-spark", steps[1].Id);
        NoPart(story, "crank-sensor", "control-unit");
    }

    [Fact]
    public void One_cylinder_of_a_shared_coil_is_dead_so_it_is_its_lead_or_that_end_of_the_coil()
    {
        var story = Shop.Story("four-stroke-4-inductive", "misses").Find("battery-cranking-volts", "10.6 V", "side:boat")
            .Find("spark-to-ground", "never", "cyl:1")
            .FindAll("spark-to-ground", "always", [2, 3, 4]);
        Verdict.Is(story, "plug-lead@cyl:1.*", "double-coil@pair:1+4/1.*", "unlisted@cyl:1.spark=*");
        NoPart(story, "crank-sensor", "control-unit");
    }

    [Fact]
    public void Spark_with_the_plugs_out_and_none_with_them_in_is_cranking_speed_and_a_booster_shows_it()
    {
        var story = Shop.Story("two-stroke-3-cdi", "no-start").Find("tester-earth", "proven")
            .Find("battery-rest-volts", "12.1 V", "side:boat")
            .Find("battery-cranking-volts", "8.6 V", "side:boat")
            .Find("cranking-rpm", "380 rpm", null, ("plugs", "out"))
            .FindAll("spark-plugs-out", "always", [1, 2, 3])
            .Find("cranking-rpm", "140 rpm", null, ("plugs", "in"))
            .FindAll("spark-to-ground", "never", [1, 2, 3], ("plugs", "in"));
        Verdict.Is(story, CrankingPower);
        story.Proposes(2, p => p.Id is "booster-crank" or "ground-drop" or "positive-drop", "a booster or voltage drops");
        NoPart(story, "charge-coil", "trigger", "starter-motor");

        var weak = story.AsFound("charge-coil@engine.winding=weak");
        story.Find("cranking-rpm", "330 rpm", null, ("plugs", "in"), ("booster", "yes")).FindAll("spark-to-ground", "always", [1, 2, 3], ("plugs", "in"), ("booster", "yes"));
        Assert.True(story.AsFound("charge-coil@engine.winding=weak") < weak / 5, "what sparks at speed is not weak");
        Verdict.Is(story, CrankingPower);
    }

    [Fact]
    public void Click_only_and_the_battery_stays_up_the_path_is_followed_and_falls_to_six_it_is_turned_by_hand_before_any_starter()
    {
        var open = Shop.Story("two-stroke-3-cdi", "no-crank").Find("starter-sound", "clicks").Find("battery-cranking-volts", "12.3 V", "side:boat");
        open.Proposes(2, p => p.Id is "solenoid-supply" or "starter-motor-supply", "where the volts end");
        NoPart(open, "starter-motor", "battery");

        var drawn = Shop.Story("two-stroke-3-cdi", "no-crank").Find("starter-sound", "clicks").Find("battery-rest-volts", "12.4 V", "side:boat").Find("battery-cranking-volts", "6 V", "side:boat");
        Verdict.Is(drawn, "battery@side:boat.*", "rotating-group@engine.freedom=locked");
        drawn.Proposes(2, p => p.Id == "turn-by-hand", "plugs out, turned by hand");
        NoPart(drawn, "starter-motor");
    }

    [Fact]
    public void Cold_and_flooded_is_aired_first_then_the_flood_is_cleared_and_wet_again_it_is_the_primer()
    {
        var story = new Story(Shop.Workbench, "two-stroke-3-cdi", "no-start")
            .Find("how-primed", "much").Find("fuel-smell", "strong")
            .Find("battery-cranking-volts", "9.9 V", "side:boat").FindAll("plug-wetness", "fuel", [1, 2, 3]);
        Assert.Equal("make-safe", story.Next(1)[0].Kind);
        Verdict.Is(story, "starting-enrichment@engine.*", "cylinder@cyl:*.liquid=washed");

        Aired(story).Proposes(2, p => p.Id == "clear-flood" && p.Steps[0].Contains("booster", StringComparison.Ordinal) && p.Steps.Any(s => s.Contains("plugs out and dried", StringComparison.Ordinal)), "clearing the flood on a booster, plugs out and dried");
        Assert.DoesNotContain(story.Next(6), p => p.Id is "fires-on-hand-fuel" or "plug-own-spark" or "clean-carburettor");
        Boosted(story.Record(new Intake("how-tried", "many")));

        Aired(story.Remedy("clear-flood").SetUp("heat", "cold"))
            .Find("how-primed", "normal").FindAll("spark-to-ground", "always", [1, 2, 3]).FindAll("plug-wetness", "fuel", [1, 2, 3]);
        Assert.Contains(Leader(story), (string[])["starting-enrichment@engine.action=lets-in", "carburettor@cyl:1.float=stuck-open"]);
        Assert.DoesNotContain(story.Next(5), p => p.Id == "clean-carburettor");
    }

    /// <summary>Aired, the booster is the next step, with its own cautions and its place on the restore list, and then the flood is cleared.</summary>
    private static void Boosted(Story story)
    {
        var next = story.Next(2);
        Assert.Equal([("set-up", "booster"), ("remedy", "clear-flood")], next.Select(p => (p.Kind, p.Id)));
        Assert.Contains(next[0].Cautions, c => c.Id == "battery-sparks");
        Assert.Contains("booster-battery", next[0].Tools);
        var without = new Story(story, story.Job).Record(new Tools([], ["booster-battery"]));
        Assert.Equal("clear-flood", without.Next(1)[0].Id);

        var across = new Story(story, story.Job).SetUp("booster", "yes");
        Assert.Equal("clear-flood", across.Next(1)[0].Id);
        Assert.Contains(across.Diagnosis.Restore, r => r.Key == "booster");
    }

    [Fact]
    public void Even_and_low_on_a_flooded_four_stroke_is_washed_above_worn_and_wet_again_it_is_injector_or_regulator()
    {
        var story = new Story(Shop.Workbench, "four-stroke-4-inductive", "no-start")
            .Find("how-cranked", "much").Find("fuel-smell", "faint").FindAll("plug-wetness", "fuel", [1, 2, 3, 4]);
        foreach (var (cylinder, psi) in ((int, int)[])[(1, 105), (2, 100), (3, 110), (4, 100)])
        {
            story.Find("compression-dry", $"{psi} psi", $"cyl:{cylinder}");
        }

        foreach (var cylinder in story.Cylinders)
        {
            Assert.True(WashedOverWorn(story, cylinder) > 10);
        }

        Aired(story).Proposes(2, p => p.Id == "clear-over-fuelled" && p.Steps.Any(s => s.Contains("oil into each hole", StringComparison.Ordinal)) && p.Steps.Any(s => s.StartsWith("Gauge again", StringComparison.Ordinal)), "clearing it, oiled where it was washed and gauged again");
        // Oil brings all of it back, which washing and rings share, and valves do not.
        var oiled = new Story(story, story.Job);
        foreach (var cylinder in story.Cylinders)
        {
            oiled.Find("compression-oiled", "165 psi", $"cyl:{cylinder}");
            Assert.True(WashedOverWorn(oiled, cylinder) > 10);
            Assert.True(oiled.AsFound($"valves@cyl:{cylinder}.seats=leaking") < story.AsFound($"valves@cyl:{cylinder}.seats=leaking"));
        }

        Aired(oiled).Proposes(2, p => p.Id == "clear-over-fuelled", "clearing it, with oil where it was washed");

        // Dried out it has its compression again: it was not the rings.
        Aired(oiled.Remedy("clear-over-fuelled"));
        foreach (var cylinder in story.Cylinders)
        {
            oiled.Find("compression-dry", "170 psi", $"cyl:{cylinder}");
            Assert.InRange(oiled.Now($"piston-rings@cyl:{cylinder}.seal=worn"), 0, 0.01);
        }

        Aired(story.Remedy("clear-over-fuelled").SetUp("heat", "cold"))
            .Find("how-cranked", "normal").FindAll("spark-to-ground", "always", [1, 2, 3, 4]).FindAll("plug-wetness", "fuel", [1, 2, 3, 4]);
        Assert.Matches("^(pressure-regulator@engine|injector@)", Leader(story));
    }

    [Fact]
    public void Dead_when_hot_and_alive_when_cool_is_a_shared_heat_fault_looked_for_while_it_is_hot()
    {
        var story = Shop.Story("two-stroke-3-cdi", "dies-hot").Find("tester-earth", "proven")
            .Find("lanyard-clip", "home", null, ("heat", "hot"))
            .Find("bulb-feel", "firm", null, ("heat", "hot"))
            .Find("tank-vent-open", "open")
            .FindAll("spark-to-ground", "never", [1, 2, 3], ("heat", "hot"));
        story.Proposes(2, p => p.Id == "spark-stop-wire-off" && p.SetUp["heat"] == "hot", "the stop wire off, hot").Proposes(2, p => p.Id == "charge-peak" && p.SetUp["heat"] == "hot", "peak volts, hot");

        story.SetUp("heat", "cold").FindAll("spark-to-ground", "always", [1, 2, 3], ("heat", "cold"));
        string[] shared = ["charge-coil@engine.winding=open-hot", "trigger@engine.common=open-hot", "control-unit@engine.electronics=dead-hot"];
        Assert.Equal(shared.Order(), story.Diagnosis.BeliefNow().Causes.Where(c => !c.Consequence).OrderByDescending(c => c.AsFound).Take(3).Select(c => c.Cause).Order());
        story.Proposes(2, p => p.Id == "spark-stop-wire-off" && p.Said.GetValueOrDefault("heat") == "hot", "the stop wire off, hot again").Proposes(2, p => p.Id == "charge-peak" && p.Said.GetValueOrDefault("heat") == "hot", "peak volts, hot again");
        NoPart(story, "ignition-coil");

        // Ohms that are in specification cold say next to nothing about a fault of heat.
        var before = story.AsFound("charge-coil@engine.winding=open-hot");
        var after = story.Find("charge-coil-ohms", "350 ohm").AsFound("charge-coil@engine.winding=open-hot");
        Assert.InRange(10 * Math.Log10(before / (1 - before) * (1 - after) / after), -2, 2);
    }

    [Fact]
    public void Spark_at_death_and_a_flat_bulb_is_the_supply_of_fuel_and_not_the_ignition()
    {
        var story = Shop.Story("two-stroke-3-cdi", "dies-hot")
            .FindAll("spark-to-ground", "always", [1, 2, 3], ("heat", "hot"))
            .Find("bulb-feel", "flat", null, ("heat", "hot"));
        Verdict.Is(story, "tank-vent@side:boat.*", "fuel-line@side:boat.*", "fuel-tank@side:boat.*");
        story.Proposes(2, p => p.Id is "tank-vent-open" or "known-good-tank-start", "the cap opened or another tank");
        Assert.DoesNotContain(story.Next(6), p => p.Id.StartsWith("spark", StringComparison.Ordinal));
    }

    [Fact]
    public void One_oily_plug_on_a_two_stroke_gets_a_known_good_plug_and_still_dead_the_gauge()
    {
        var story = Shop.Story("two-stroke-3-cdi", "misses").Find("tester-earth", "proven")
            .FindAll("spark-to-ground", "always", [1, 2, 3]).FindAll("plug-deposit", "tan", [1, 2]).Find("plug-deposit", "oily", "cyl:3");
        story.Proposes(2, p => p.Id.StartsWith("known-good-plug", StringComparison.Ordinal) && p.Place == "cyl:3", "a known-good plug");
        story.Find("known-good-plug-fires", "dead", "cyl:3").Proposes(2, p => p.Id == "compression-dry" && p.Place == "cyl:3", "compression");
    }

    [Fact]
    public void One_oily_plug_on_a_four_stroke_and_compression_that_oil_brings_back_is_rings_and_next_it_is_heard_where_it_leaks()
    {
        var story = Shop.Story("four-stroke-4-inductive", "misses").FindAll("plug-deposit", "tan", [1, 2, 4]).Find("plug-deposit", "oily", "cyl:3");
        foreach (var (cylinder, psi) in ((int, int)[])[(1, 195), (2, 190), (3, 140), (4, 192)])
        {
            story.Find("compression-dry", $"{psi} psi", $"cyl:{cylinder}");
        }

        story.Find("compression-oiled", "175 psi", "cyl:3");
        Verdict.Is(story, "piston-rings@cyl:3.*");
        story.Proposes(2, p => p.Id == "leak-down" && p.Place == "cyl:3", "where it leaks");
        Assert.DoesNotContain(story.Next(8), p => p.Id is "oil-ratio" or "right-oil-mix");

        // Air into the crankcase settles it.
        Assert.InRange(story.Find("leak-down", "rings", "cyl:3").AsFound("piston-rings@cyl:3.seal=worn"), 0.95, 1);
    }

    [Fact]
    public void Two_that_share_a_connector_stay_dead_with_other_coils_and_come_back_when_it_is_touched_so_it_is_cleaned_and_provoked()
    {
        var story = GroupTouched();
        Assert.InRange(story.AsFound("output-connector@group:5+6.pins=loose"), 0.7, 1);
        story.Proposes(2, p => p.Id is "clean-group-connector" or "group-connector-look", "pins looked at and cleaned");
        NoPart(story, "control-unit");

        // It runs now, and is not mended: cleaned first, else provoked.
        var steps = story.Find("starting-test", "runs-well").Next(2);
        Assert.Equal("clean-group-connector", steps[0].Id);
        Assert.Equal(("proof", "hot-run-test"), (steps[1].Kind, steps[1].Id));
    }

    [Fact]
    public void A_portable_laid_over_with_oil_on_both_plugs_is_drained_first_and_is_not_its_rings()
    {
        var story = Shop.Story("four-stroke-2-cdi", "no-start").Record(new Intake("last-thing-done", "laid-over"))
            .FindAll("compression-dry", "180 psi", [1, 2]).FindAll("plug-wetness", "oil", [1, 2]);
        Verdict.Is(story, "cylinder@cyl:*.liquid=oil");
        Assert.All(story.Cylinders, c => Assert.InRange(story.AsFound($"cylinder@cyl:{c}.liquid=oil"), 0.8, 1));
        Assert.All(story.Cylinders, c => Assert.InRange(story.AsFound($"piston-rings@cyl:{c}.seal=worn"), 0, 0.02));

        // Nothing turns it with the plugs in before the oil is out.
        Assert.Equal(("make-safe", "liquid-in-cylinder"), (story.Next(1)[0].Kind, story.Next(1)[0].Id));
        Assert.Contains(story.Diagnosis.Next(1).Withheld, w => w.Id == "starting-test");
        story.Proposes(2, p => p.Id == "drain-all-cylinders", "the oil drained");
        NoPart(story, "rings", "overhaul-cylinder");
    }

    [Fact]
    public void What_lay_over_has_oil_in_all_its_cylinders_so_one_found_wet_speaks_for_the_other_and_the_more_is_seen_the_more()
    {
        var story = Shop.Story("four-stroke-4-inductive", "no-start");
        double[] fourth = [.. Enumerable.Range(1, 3).Select(c => story.Find("plug-wetness", "oil", $"cyl:{c}").AsFound("cylinder@cyl:4.liquid=oil"))];
        Assert.True(fourth[0] < fourth[1] && fourth[1] < fourth[2]);
        var told = story.Record(new Intake("last-thing-done", "laid-over"));
        Assert.InRange(told.AsFound("cylinder@cyl:4.liquid=oil"), fourth[2], 1);
        Assert.True(told.Diagnosis.BeliefNow().CommonCauses.Single(c => c.Id == "laid-over").Probability > 0.9);
    }

    [Theory]
    [InlineData("two-stroke-6-banks", 5, 6, "group-connector-look", "clean-group-connector", "output-connector@group:5+6.pins=corroded*")]
    [InlineData("four-stroke-4-inductive", 1, 4, "coil-connector-look", "clean-coil-connector", "coil-connector@pair:1+4.pins=corroded*")]
    public void A_dead_pair_that_cleaning_its_green_pins_cured_had_corroded_pins(string layout, int one, int other, string look, string clean, string pins)
    {
        var place = pins.Split('@', '.')[1];
        var story = Shop.Story(layout, "misses").Find("tester-earth", "proven").FindAll("spark-to-ground", "never", [one, other]);
        story.FindAll("spark-to-ground", "always", story.Cylinders.Where(c => c != one && c != other));
        story.Find(look, "corroded", place).Proposes(1, p => p.Id == clean, "the pins cleaned");
        story.Remedy(clean, place).FindAll("spark-to-ground", "always", [one, other]).Find("starting-test", "runs-well");
        Verdict.Is(story, pins);
        Assert.InRange(story.Causes.Where(c => c.Cause.StartsWith(pins.TrimEnd('*'), StringComparison.Ordinal)).Sum(c => c.AsFound), 0.8, 1);
    }

    /// <summary>5 and 6 dead whatever coil they have; all six spark once the connector was in the hand.</summary>
    internal static Story GroupTouched() => Shop.Story("two-stroke-6-banks", "misses").Find("tester-earth", "proven")
        .FindAll("spark-to-ground", "always", [1, 2, 3, 4]).FindAll("spark-to-ground", "never", [5, 6])
        .Swap("ignition-coil", "cyl:4", "cyl:5").Swap("ignition-coil", "cyl:3", "cyl:6")
        .FindAll("spark-to-ground", "always", [1, 2, 3, 4]).FindAll("spark-to-ground", "never", [5, 6])
        .Swap("ignition-coil", "cyl:4", "cyl:5").Swap("ignition-coil", "cyl:3", "cyl:6")
        .Find("group-connector-look", "good", "group:5+6").FindAll("spark-to-ground", "always", [1, 2, 3, 4, 5, 6]);

    /// <summary>The air smelt clear and no leak, as far as clearing the cylinders does not show it.</summary>
    private static Story Aired(Story story) => story.Record(new Ventilated(["cowl", "bilge", "tank"])).Record(new Interlock("leak-stopped", Interlock.Met));

    private static double WashedOverWorn(Story story, int cylinder) =>
        Decibans.Of(story.AsFound($"cylinder@cyl:{cylinder}.liquid=washed")) - Decibans.Of(story.AsFound($"piston-rings@cyl:{cylinder}.seal=worn"));

    private static string Leader(Story story) => story.Diagnosis.BeliefNow().Causes.Where(c => !c.Consequence).MaxBy(c => c.Now)!.Cause;

    private static Story NoSparkAtGoodSpeed() => Shop.Story("two-stroke-3-cdi", "no-start")
        .Find("battery-cranking-volts", "11.0 V", "side:boat")
        .Find("cranking-rpm", "320 rpm")
        .FindAll("spark-to-ground", "never", [1, 2, 3]);

    /// <summary>That remedy is among the first steps.</summary>
    private static void Mends(Story story, int top, string remedy) => story.Proposes(top, p => p.Id == remedy, remedy);

    /// <summary>No remedy of these parts is among the first five steps.</summary>
    private static void NoPart(Story story, params string[] parts) =>
        Assert.DoesNotContain(story.Next(5), p => p.Kind == "remedy" && parts.Any(part => p.Id.EndsWith(part, StringComparison.Ordinal)));
}
