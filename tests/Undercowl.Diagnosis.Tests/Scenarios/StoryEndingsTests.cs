using Undercowl.Diagnosis.Answers;
using Undercowl.Diagnosis.Tests.Fixtures;
using Undercowl.Jobs;
using Xunit;

namespace Undercowl.Diagnosis.Tests.Scenarios;

/// <summary>
/// The stories of a master technician played to their ends: proven only when it is, else what is missing. What proves which complaint is common
/// practice: a cold start and a hot restart, a run under load, past the former failure when hot, provoked and repeated; always water and stops.
/// </summary>
public sealed class StoryEndingsTests
{
    [Fact]
    public void No_start_is_not_signed_off_while_the_stop_wire_is_off_nor_before_it_started_cold_and_hot_and_stops()
    {
        var story = Shop.Story("two-stroke-3-cdi", "no-start")
            .Find("battery-cranking-volts", "11.0 V", "side:boat").Find("cranking-rpm", "320 rpm")
            .FindAll("spark-to-ground", "never", [1, 2, 3]).FindAll("spark-stop-wire-off", "always", [1, 2, 3]);
        story.Remedy("mend-engine-stop-wire").Find("starting-test", "runs-well");
        Lacks(story, "stop wire off", "restart when it is warm", "key stop", "cooling water");

        // Put back it must start again: it was another engine that started.
        story.SetUp("stop-wire", "on").Find("spark-harness-apart", "always", "cyl:1").SetUp("harness-plug", "joined");
        Lacks(story, "No good reading of", "from cold");
        story.Find("starting-test", "runs-well");
        Lacks(story, "restart when it is warm", "key stop");
        Assert.All(story.Next(3), p => Assert.Equal("proof", p.Kind));
        Ends(story.Find("starting-test", "runs-well", null, ("heat", "hot")));
    }

    [Fact]
    public void Both_faults_of_a_double_one_are_mended_or_it_does_not_end()
    {
        var story = Shop.Story("two-stroke-3-cdi", "no-start").FindAll("spark-to-ground", "never", [1, 2, 3])
            .FindAll("spark-stop-wire-off", "always", [1, 3]).Find("spark-stop-wire-off", "never", "cyl:2")
            .SetUp("stop-wire", "on").Remedy("mend-engine-stop-wire").Find("starting-test", "runs-rough");
        Lacks(story, "No good reading of", "not yet likely enough");
        Ends(Restarts(story.Remedy("replace-ignition-coil", "cyl:2")));
    }

    [Fact]
    public void A_miss_is_proven_under_load()
    {
        var story = Shop.Story("four-stroke-4-inductive", "misses").FindAll("spark-to-ground", "never", [1, 4]).FindAll("spark-to-ground", "always", [2, 3])
            .Find("coil-connector-look", "good", "pair:1+4").Swap("double-coil", "pair:1+4", "pair:2+3")
            .FindAll("spark-to-ground", "always", [1, 4]).FindAll("spark-to-ground", "never", [2, 3])
            .Swap("double-coil", "pair:1+4", "pair:2+3").Remedy("replace-double-coil", "pair:1+4").Find("starting-test", "runs-well");
        Lacks(story, "under load");
        Ends(story.Find("load-run-test", "runs-well"));
    }

    [Fact]
    public void With_the_booster_across_a_start_proves_nothing()
    {
        var story = Shop.Story("two-stroke-3-cdi", "no-start").Find("battery-rest-volts", "12.1 V", "side:boat").Find("battery-cranking-volts", "8.6 V", "side:boat")
            .Find("booster-crank", "brisk");
        story.Find(new SaidFinding("starting-test", "runs-well") { SetUp = new Dictionary<string, string> { ["booster"] = "yes" } });
        Lacks(story, "booster battery across", "No good reading of", "from cold");
        // Taken off again, it has still not started on its own battery.
        Lacks(story.SetUp("booster", "no"), "No good reading of", "from cold");
        Ends(Restarts(story.Remedy("charge-battery")));
    }

    [Fact]
    public void What_somebody_tells_proves_nothing_but_may_take_a_proof_back()
    {
        var story = Shop.Story("two-stroke-3-cdi", "no-start").Find("lanyard-clip", "off").Remedy("clip-lanyard");
        Lacks(Told(Told(story, "starting-test", "runs-well"), "stops-shown", "all-work"), "No good reading of", "from cold", "key stop");
        Restarts(story).Find("telltale", "strong").Find("stops-shown", "all-work");
        Assert.True(Told(story, "starting-test", "runs-well").Diagnosis.Proof().Proven, "what was seen stands, whatever good is told of it");
        Lacks(Told(story, "starting-test", "cranks-only"), "No good reading of", "restart when it is warm");

        static Story Told(Story story, string check, string reading) => story.Find(new SaidFinding(check, reading) { Hearsay = true });
    }

    [Fact]
    public void Work_recorded_under_a_name_that_has_changed_since_asks_for_the_same_to_be_shown()
    {
        var renamed = Shop.Knowledge with { Aliases = new() { ["dry-out"] = "clear-flood" } };
        var story = Shop.Story(renamed, "two-stroke-3-cdi", "no-start");
        Assert.DoesNotContain(story.Diagnosis.Proof().Missing, m => m.Contains("no leak", StringComparison.Ordinal));
        Lacks(story.Record(new Remedy("dry-out", 1, Place.Parse("engine"))), "no leak");
    }

    [Fact]
    public void After_fuel_work_no_leak_must_have_been_seen()
    {
        var story = Shop.Story("two-stroke-3-cdi", "no-start").Find("how-primed", "much").FindAll("spark-to-ground", "always", [1, 2, 3]).FindAll("plug-wetness", "fuel", [1, 2, 3])
            .Remedy("clear-flood");
        Lifted(story, "air-clear", "leak-stopped", "holes-closed", "cylinders-cleared").Find("plug-wetness", "dry", "cyl:1").Find("fuel-smell", "none");
        Restarts(story).Find("telltale", "strong").Find("stops-shown", "all-work");
        Lacks(story, "no leak");
        Assert.DoesNotContain(story.Find("leak-look", "weeps").Diagnosis.Proof().Missing, m => m.Contains("tell-tale", StringComparison.Ordinal));

        // What leaks is fuel in the air again.
        Lacks(story, "no leak", "Nothing electrical");
        Assert.Contains(story.Diagnosis.Next(1).Withheld, w => w.Id == "battery-cranking-volts");
        Lacks(Lifted(story.Find("leak-look", "dry"), "air-clear"), "Nothing electrical");
        Ends(Lifted(story, "leak-stopped", "holes-closed", "cylinders-cleared"));
        Assert.DoesNotContain(story.Diagnosis.Next(1).Withheld, w => w.Id == "battery-cranking-volts");
    }

    [Fact]
    public void Cool_is_not_fixed_and_a_new_coil_is_run_past_the_former_failure()
    {
        var story = Shop.Story("two-stroke-3-cdi", "dies-hot").FindAll("spark-to-ground", "never", [1, 2, 3], ("heat", "hot")).Find("charge-peak", "20 V", null, ("heat", "hot"))
            .SetUp("heat", "cold").FindAll("spark-to-ground", "always", [1, 2, 3]).Find("starting-test", "runs-well");
        Lacks(story, "Run it hot", "not yet likely enough");
        Ends(story.Find("charge-connector-look", "good").Remedy("replace-charge-coil").Find("hot-run-test", "runs-well"));
    }

    [Fact]
    public void A_fault_that_cleared_when_it_was_handled_ends_unproven_until_it_is_mended_provoked_and_good_twice()
    {
        var story = FieldStoriesTests.GroupTouched().Find("starting-test", "runs-well").Find("load-run-test", "runs-well").Find("telltale", "strong").Find("stops-shown", "all-work");
        Assert.True(Lacks(story, "provoked", "not yet likely enough").HealthyNow < 0.1);

        story.Remedy("clean-group-connector", "group:5+6").SetUp("heat", "cold").Find("starting-test", "runs-well").Find("load-run-test", "runs-well");
        Lacks(story, "good on two occasions");
        Ends(story.Find("hot-run-test", "runs-well"));
    }

    [Fact]
    public void Rings_that_nobody_wants_to_pay_for_end_with_what_stays_open()
    {
        var story = Shop.Story("four-stroke-4-inductive", "misses").Find("plug-deposit", "oily", "cyl:3").Find("compression-dry", "140 psi", "cyl:3")
            .Find("compression-oiled", "175 psi", "cyl:3").Find("leak-down", "rings", "cyl:3").Remedy("clean-plug", "cyl:3").Find("starting-test", "runs-well");
        Lacks(story, "all plugs out", "under load", "not yet likely enough");
        story.SetUp("plugs", "in");
        Assert.Contains("piston rings", story.Diagnosis.Proof().Missing.Single(m => m.Contains("not yet likely enough", StringComparison.Ordinal)), StringComparison.Ordinal);
    }

    [Fact]
    public void A_stop_that_does_not_stop_it_keeps_a_job_open()
    {
        var story = Restarts(Shop.Story("two-stroke-3-cdi", "no-start").Find("lanyard-clip", "off").Remedy("clip-lanyard")).Find("telltale", "strong").Find("stops-shown", "runs-on");
        Lacks(story, "lanyard stop");
        Assert.Contains(story.Diagnosis.BeliefNow().Causes, c => c.Cause == "lanyard-switch@side:boat.stop-contact=dead" && c.Now > 0.1);
    }

    private static Story Lifted(Story story, params string[] conditions)
    {
        foreach (var condition in conditions)
        {
            story.Record(new Interlock(condition, Interlock.Met));
        }

        return story;
    }

    private static Story Restarts(Story story) => story.Find("starting-test", "runs-well").Find("starting-test", "runs-well", null, ("heat", "hot"));

    /// <summary>With what every job asks besides it is proven.</summary>
    private static void Ends(Story story)
    {
        var proof = story.Find("telltale", "strong").Find("stops-shown", "all-work").Diagnosis.Proof();
        Assert.True(proof.Proven, string.Join(Environment.NewLine, proof.Missing));
    }

    private static ProofAnswer Lacks(Story story, params string[] what)
    {
        var proof = story.Diagnosis.Proof();
        Assert.False(proof.Proven);
        Assert.All(what, w => Assert.True(proof.Missing.Any(m => m.Contains(w, StringComparison.OrdinalIgnoreCase)), $"\"{w}\" is not among:{Environment.NewLine}{string.Join(Environment.NewLine, proof.Missing)}"));
        return proof;
    }
}
