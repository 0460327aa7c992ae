using Undercowl.Diagnosis.Beliefs;
using Undercowl.Diagnosis.Tests.Fixtures;
using Xunit;

namespace Undercowl.Diagnosis.Tests.Scenarios;

/// <summary>
/// What misled people in real accounts (common practice, no source; the figures are judgement). Spark with the plugs out and none with them in, two
/// faults of which one hides the other, and a replacement that is bad itself are held beside: <see cref="FieldStoriesTests"/>, <see cref="RepairedAndStillDeadTests"/>.
/// </summary>
public sealed class TrapsTests
{
    private const string WeakCoil = "ignition-coil@cyl:2.winding=weak", WeakCharge = "charge-coil@engine.winding=weak";

    [Fact]
    public void A_blue_spark_in_open_air_does_not_clear_a_coil_that_is_too_weak_to_fire_under_compression()
    {
        var story = Shop.Story("two-stroke-3-cdi", "misses").Find("cut-out-shorted", "same", "cyl:2");
        var before = Decibans.Of(story.AsFound(WeakCoil));
        Assert.InRange(Decibans.Of(story.Find("plug-own-spark", "blue", "cyl:2").AsFound(WeakCoil)) - before, -2, 2);

        // A wide gap asks what compression asks.
        Assert.True(Decibans.Of(story.Find("spark-to-ground", "never", "cyl:2", ("gap", "11mm")).Find("spark-to-ground", "always", "cyl:2", ("gap", "5mm")).AsFound(WeakCoil)) > before + 8);
    }

    [Fact]
    public void Ohms_in_range_do_not_clear_a_winding_whose_output_is_weak()
    {
        var story = Shop.Story("two-stroke-3-cdi", "no-start").Find("cranking-rpm", "320 rpm");
        story.FindAll("spark-to-ground", "never", story.Cylinders, ("gap", "11mm")).FindAll("spark-to-ground", "always", story.Cylinders, ("gap", "5mm"));
        var before = Decibans.Of(story.AsFound(WeakCharge));
        Assert.InRange(Decibans.Of(story.Find("charge-coil-ohms", "1900 ohm").AsFound(WeakCharge)) - before, -2, 2);
    }

    /// <summary>12 V where the specification is a floor of 100 V: by a peak-reading adapter it condemns the supply, by a plain meter it says next to nothing.</summary>
    [Fact]
    public void A_plain_meter_on_a_pulsed_output_reads_far_below_the_peak_and_condemns_nothing()
    {
        const string Open = "charge-coil@engine.winding=open";
        double Weight(string? tool)
        {
            var story = Shop.Story("two-stroke-3-cdi", "no-start").Find("cranking-rpm", "320 rpm");
            var before = Decibans.Of(story.AsFound(Open) + story.AsFound(WeakCharge));
            story.Find(new SaidFinding("charge-peak", "12 V", "engine") { Tool = tool });
            return Decibans.Of(story.AsFound(Open) + story.AsFound(WeakCharge)) - before;
        }

        Assert.True(Weight(null) > 8);
        Assert.InRange(Weight("plain-meter"), -1, 1);
    }

    [Fact]
    public void A_fault_that_clears_while_handled_is_one_that_comes_and_goes_and_nothing_is_proven()
    {
        var story = Shop.Story("two-stroke-3-cdi", "misses")
            .Find("spark-to-ground", "always", "cyl:1").Find("spark-to-ground", "always", "cyl:3").Find("spark-to-ground", "never", "cyl:2")
            .Find("coil-connector-look", "good", "cyl:2");
        var (loose, broken) = (story.AsFound("coil-connector@cyl:2.pins=loose"), story.AsFound("ignition-coil@cyl:2.winding=open"));
        story.Find("spark-to-ground", "always", "cyl:2");
        Assert.True(Decibans.Of(story.AsFound("coil-connector@cyl:2.pins=loose")) > Decibans.Of(loose) + 2, "that it cleared speaks for what comes and goes");
        Assert.True(Decibans.Of(story.AsFound("ignition-coil@cyl:2.winding=open")) < Decibans.Of(broken) - 10, "and against what is always there");
        Assert.False(story.Diagnosis.Proof().Proven);
    }

    [Fact]
    public void No_spark_on_any_cylinder_with_the_ground_not_proven_asks_for_the_testers_own_ground_and_a_clip_on_paint_takes_most_of_it_back()
    {
        var story = Shop.Story("two-stroke-3-cdi", "no-start").Find("battery-cranking-volts", "11.0 V", "side:boat").Find("cranking-rpm", "320 rpm");
        double Dead(Story s) => new Verdict(s.Diagnosis, ["charge-coil@engine.*", "control-unit@engine.electronics=*", "lanyard-switch@*", "key-switch@side:boat.run-contact=*"]).Named;
        var before = Dead(story);
        story.FindAll("spark-to-ground", "never", story.Cylinders);
        var dead = Dead(story);
        Assert.True(dead > before + 5);
        story.Proposes(8, p => p.Id == "tester-earth", "proving the tester's ground");
        Assert.InRange(Dead(story.Find("tester-earth", "bad")), before - 2, (before + dead) / 2);
    }
}
