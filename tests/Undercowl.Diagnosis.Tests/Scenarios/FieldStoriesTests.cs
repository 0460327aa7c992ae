using Undercowl.Diagnosis.Tests.Fixtures;
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
        story.Proposes(2, p => p.Id is "pair-coil-swap-spark" or "coil-connector-look" or "coil-feed-volts", "feed and connector, or the coils exchanged");
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
    public void Spark_with_the_plugs_out_and_none_with_them_in_is_cranking_speed()
    {
        var story = Shop.Story("two-stroke-3-cdi", "no-start")
            .Find("battery-rest-volts", "12.1 V", "side:boat")
            .Find("battery-cranking-volts", "8.6 V", "side:boat")
            .Find("cranking-rpm", "380 rpm", null, ("plugs", "out"))
            .FindAll("spark-plugs-out", "always", [1, 2, 3])
            .Find("cranking-rpm", "140 rpm")
            .FindAll("spark-to-ground", "never", [1, 2, 3]);
        Verdict.Is(story, "battery@side:boat.*", "battery-terminals@side:boat.*", "positive-cable@*", "negative-cable@*", "starter-motor@*", "starter-solenoid@*");
        NoPart(story, "charge-coil", "trigger");
    }

    [Fact]
    public void Dead_when_hot_and_alive_when_cool_is_a_shared_heat_fault_and_cool_ends_nothing()
    {
        var story = Shop.Story("two-stroke-3-cdi", "dies-hot")
            .Find("bulb-feel", "firm", null, ("heat", "hot"))
            .Find("tank-vent-open", "open")
            .FindAll("spark-to-ground", "never", [1, 2, 3], ("heat", "hot"))
            .SetUp("heat", "cold")
            .FindAll("spark-to-ground", "always", [1, 2, 3], ("heat", "cold"));
        string[] shared = ["charge-coil@engine.winding=open-hot", "trigger@engine.common=open-hot", "control-unit@engine.electronics=dead-hot"];
        Assert.Equal(shared.Order(), story.Diagnosis.BeliefNow().Causes.Where(c => !c.Consequence).OrderByDescending(c => c.AsFound).Take(3).Select(c => c.Cause).Order());
        Assert.False(story.Diagnosis.Proof().Proven);
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
