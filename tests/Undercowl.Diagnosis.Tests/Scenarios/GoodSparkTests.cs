using Undercowl.Diagnosis.Beliefs;
using Undercowl.Diagnosis.Tests.Fixtures;
using Undercowl.Jobs;
using Xunit;

namespace Undercowl.Diagnosis.Tests.Scenarios;

/// <summary>Blue spark everywhere: wet plugs say flooding, dry plugs say no fuel, and a spark fault is hardly left.</summary>
public sealed class GoodSparkTests
{
    private static readonly string[] SparkParts =
    [
        "ignition-coil@", "double-coil@", "charge-coil@", "trigger@", "crank-sensor@", "control-unit@", "coil-driver@", "coil-connector@", "coil-ground@", "coil-feed@", "plug-lead@", "plug-cap@", "key-switch@side:boat.run", "lanyard-switch@",
        "charge-connector@", "trigger-connector@", "unit-connector@", "unit-ground@", "unit-fuse@", "flywheel-magnets@", "engine-harness@side:engine.stop", "boat-harness@side:boat.stop", "main-plug@engine.stop",
    ];

    private static readonly string[] FuelSteps =
    [
        "known-good-tank-start", "bulb-feel", "tank-level", "tank-vent-open", "fuel-at-pump", "fuel-rail-pressure", "pump-sound", "bowl-fuel", "filter-look", "fuel-sample",
        "connect-fuel-line", "open-vent", "fill-tank",
    ];

    private static readonly string[] Timing = ["flywheel-key@engine.fit=sheared", "lead-routing@engine.order=crossed", "timing-belt@engine.drive=jumped"];

    [Theory]
    [InlineData("two-stroke-3-cdi", "starting-enrichment@engine.use=over-primed", "how-primed", "carburettor@cyl:*.float=stuck-open")]
    [InlineData("four-stroke-4-inductive", "cold-start-control@engine.use=over-fuelled", "how-cranked", "injector@cyl:*.spray=leaking")]
    public void Wet_plugs_mean_flooding_with_timing_and_a_plug_that_fails_under_pressure_still_in_the_list(string layout, string flooded, string asks, string floods)
    {
        var story = BlueEverywhere(layout, "fuel");
        Assert.Equal(flooded, Leader(story));

        // Water that comes with the fuel would have beaded on one of the plugs.
        var water = story.AsFound("fuel-tank@side:boat.fuel=water");
        Assert.True(water < 0.1 && water < story.AsFound(flooded) / 5, $"water in the fuel {water}, {flooded} {story.AsFound(flooded)}");
        SparkCausesFall(story, flooded);
        StayInTheList(story);
        Assert.Equal("make-safe", story.Next()[0].Kind);
        story.Proposes(4, p => p.Id == "fuel-sample", "whether the fuel is bad");
        Assert.DoesNotContain(story.Next(8), p => p.Id == "fires-on-hand-fuel" || p.SetUp.Values.Contains("squirted"));

        story.Find("fuel-sample", "clean").Proposes(3, p => p.Id == asks, "how it was started").Find(asks, "much");
        Verdict.Is(story, flooded, floods, "cylinder@cyl:*.liquid=washed");
        StayInTheList(story);
    }

    [Theory]
    [InlineData("two-stroke-3-cdi", "how-primed", "clear-flood")]
    [InlineData("four-stroke-4-inductive", "how-cranked", "clear-over-fuelled")]
    public void A_flooded_engine_is_aired_cleared_and_started_and_that_ends_it(string layout, string asked, string clear)
    {
        var story = BlueEverywhere(layout, "fuel").Find("fuel-sample", "clean").Find(asked, "much");
        Assert.Equal("make-safe", story.Next()[0].Kind);

        // Clearing the cylinders must not wait for the cylinders to be cleared.
        Aired(story).ProposesFirst(clear);
        story.Remedy(clear);
        Assert.DoesNotContain(story.Warnings, w => w.Contains("withheld", StringComparison.Ordinal));
        Assert.Contains("has been read since", story.Diagnosis.Next(8).Unavailable.Single(n => n.Id == clear).Reason, StringComparison.Ordinal);
        Assert.Equal("make-safe", story.Next()[0].Kind);
        Aired(story).ProposesFirst("starting-test");
        story.Find("starting-test", "runs-well").Find("starting-test", "runs-well", null, ("heat", "hot")).Find("telltale", "strong").Find("stops-shown", "all-work").Find("leak-look", "dry");
        Assert.Empty(story.Diagnosis.Proof().Missing);
    }

    private static Story Aired(Story story)
    {
        foreach (var condition in (string[])["air-clear", "leak-stopped", "holes-closed"])
        {
            story.Record(new Interlock(condition, Interlock.Met));
        }

        return story;
    }

    [Theory]
    [InlineData("two-stroke-3-cdi")]
    [InlineData("four-stroke-4-inductive")]
    public void Dry_plugs_mean_no_fuel(string layout)
    {
        var story = BlueEverywhere(layout, "dry");
        string[] noFuel =
        [
            "fuel-tank@side:boat.level=*", "tank-vent@side:boat.*", "fuel-line@side:boat.*", "primer-bulb@side:boat.*", "fuel-filter@engine.*", "fuel-pump@engine.*",
            .. layout == "two-stroke-3-cdi"
                ? (string[])["starting-enrichment@engine.action=not-working", "carburettor@cyl:*", "unlisted*.mixture=*"]
                : ["cold-start-control@engine.signal=*", "injection-pump@engine.*", "pressure-regulator@engine.setting=low", "main-relay@engine.*", "injector@cyl:*", "unlisted*.mixture=*"],
        ];
        Verdict.Is(story, noFuel);
        SparkCausesFall(story, "fuel-tank@side:boat.level=empty");
        StayInTheList(story);
        Assert.All(story.Next(3), p => Assert.Contains(p.Id, FuelSteps));
        story.Proposes(4, p => p.Id == "bulb-feel", "squeezing the bulb");
    }

    private static Story BlueEverywhere(string layout, string plugs)
    {
        var story = Shop.Story(layout, "no-start").Find("cranking-by-ear", "brisk");
        return story
            .FindAll("spark-to-ground", "always", story.Cylinders)
            .FindAll("plug-own-spark", "blue", story.Cylinders)
            .FindAll("plug-wetness", plugs, story.Cylinders);
    }

    private static string Leader(Story story) => story.Causes.Where(c => !c.Consequence).MaxBy(c => c.AsFound)!.Cause;

    /// <summary>Each spark cause is less likely than when only the complaint was known, and 10 dB below the leader.</summary>
    private static void SparkCausesFall(Story story, string leader)
    {
        var before = Shop.Story(story.Diagnosis.Layout.Id, "no-start").Causes.ToDictionary(c => c.Cause, c => c.AsFound);
        var after = story.Causes;
        var lead = Decibans.Of(after.Single(c => c.Cause == leader).AsFound);
        var spark = after.Where(c => SparkParts.Any(p => c.Cause.StartsWith(p, StringComparison.Ordinal))).ToArray();
        Assert.NotEmpty(spark);
        Assert.All(spark, c =>
        {
            Assert.True(c.AsFound < before[c.Cause] || c.AsFound < c.Prior * 1.1, $"{c.Cause} rose from {before[c.Cause]} to {c.AsFound}");
            Assert.True(Decibans.Of(c.AsFound) <= lead - 10, $"{c.Cause} is only {lead - Decibans.Of(c.AsFound):0.0} dB below");
        });
    }

    /// <summary>Spark in air says nothing of when it comes nor of the plug under pressure: neither falls below half of what it was
    /// before anything was known.</summary>
    private static void StayInTheList(Story story)
    {
        var causes = story.Causes;
        var timing = causes.Where(c => Timing.Contains(c.Cause)).ToArray();
        Assert.Equal(2, timing.Length);
        Assert.All(timing, c => Assert.True(c.AsFound >= c.Prior / 2, $"{c.Cause} fell to {c.AsFound} from {c.Prior}"));

        var plugs = causes.Where(c => c.Aspect == "insulator").ToArray();
        Assert.Equal(story.Diagnosis.Layout.Cylinders, plugs.Length);
        Assert.All(plugs, c => Assert.True(c.AsFound >= c.Prior / 2, $"{c.Cause} fell to {c.AsFound} from {c.Prior}"));
    }
}
