using Undercowl.Diagnosis.Beliefs;
using Undercowl.Diagnosis.Tests.Fixtures;
using Undercowl.Jobs;
using Xunit;

namespace Undercowl.Diagnosis.Tests.Scenarios;

/// <summary>
/// The interview is evidence: it costs nothing, goes by phone and moves the odds most (common practice, no source). The pattern asked for is
/// common practice, the figures are judgement.
/// </summary>
public sealed class InterviewTests
{
    private static readonly string[] Electrical =
        ["key-switch@side:boat.run-contact=*", "lanyard-switch@*", "boat-harness@*", "main-plug@engine.stop-pin=*", "engine-harness@side:engine.stop-wire=*", "control-unit@engine.electronics=*", "charge-coil@*", "trigger@engine.common=*"];

    private static readonly string[] Fuel = ["fuel-tank@*", "tank-vent@*", "fuel-line@*", "fuel-filter@*", "fuel-pump@*", "primer-bulb@*"];

    [Fact]
    public void At_once_as_if_switched_off_is_electrical_and_stuttering_is_fuel()
    {
        double Odds(string answer, string[] causes) => new Verdict(Asked(("how-it-died", answer)).Diagnosis, causes).Named;
        Assert.True(Odds("at-once", Electrical) > Odds("at-once", Fuel) + 3);
        Assert.True(Odds("stuttered", Fuel) > Odds("stuttered", Electrical) + 3);
    }

    /// <summary>A word on the phone moves a cause, and proves none.</summary>
    [Theory]
    [InlineData("fuel-age", "last-season", "fuel-tank@side:boat.fuel=water", 2, 8)]
    [InlineData("last-thing-done", "refuelled", "fuel-tank@side:boat.fuel=water", 2, 7)]
    [InlineData("last-thing-done", "stored", "carburettor@cyl:2.jets=blocked", 2, 8)]
    [InlineData("last-thing-done", "serviced", "lead-routing@engine.order=crossed", 4, 11)]
    [InlineData("last-thing-done", "hit-something", "flywheel-key@engine.fit=sheared", 6, 20)]
    [InlineData("last-thing-done", "sank", "cylinder@cyl:1.liquid=water", 8, 25)]
    [InlineData("last-thing-done", "battery-fitted", "control-unit@engine.electronics=dead", 0.5, 6)]
    [InlineData("parts-fitted", "plugs", "spark-plug@cyl:1.electrodes=worn", -6, -1)]
    [InlineData("how-tried", "many", "battery@side:boat.state=low", 1, 4)]
    [InlineData("how-tried", "many", "starting-enrichment@engine.use=over-primed", 1, 5)]
    [InlineData("how-tried", "many", "cylinder@cyl:1.liquid=washed", 0.5, 5)]
    [InlineData("kept", "salt-water", "main-plug@engine.stop-pin=failed", 2, 7)]
    public void An_answer_moves_what_it_tells_of_and_says_so(string question, string answer, string cause, double least, double most)
    {
        var why = Asked((question, answer)).Diagnosis.Why(cause);
        var weight = why.Weights.Single(w => w.What.EndsWith(Shop.Knowledge.Intake.First(q => q.Id == question).Answers.First(a => a.Id == answer).Name, StringComparison.Ordinal));
        Assert.InRange(weight.Stepwise, least, most);
        Assert.Equal(why.PosteriorDecibans, why.PriorDecibans + why.Weights.Sum(w => w.Stepwise), 9);
    }

    /// <summary>What befell an engine hits several parts at once: the answer that tells of it raises each of them.</summary>
    [Theory]
    [InlineData("two-stroke-3-cdi", "fuel-age", "last-season", "fuel-tank@side:boat.fuel=stale", "carburettor@cyl:1.jets=blocked", "carburettor@cyl:3.float=stuck-open", "battery@side:boat.state=weak-cells")]
    [InlineData("two-stroke-3-cdi", "kept", "salt-water", "main-plug@engine.pins=corroded", "charge-connector@engine.pins=corroded-through", "unit-ground@engine.bond=resistive", "coil-ground@cyl:2.bond=resistive")]
    [InlineData("two-stroke-3-cdi", "how-it-died", "with-alarm", "head-gasket@cyl:1.seal=blown", "piston-rings@cyl:2.seal=stuck", "piston@cyl:3.crown=holed")]
    [InlineData("four-stroke-4-inductive", "last-thing-done", "battery-fitted", "unit-fuse@engine.element=blown", "main-fuse@engine.element=blown", "control-unit@engine.electronics=dead")]
    [InlineData("two-stroke-3-cdi", "last-thing-done", "hit-something", "flywheel-key@engine.fit=sheared", "rotating-group@engine.freedom=stiff")]
    [InlineData("two-stroke-3-cdi", "last-thing-done", "sank", "cylinder@cyl:1.liquid=water", "cylinder@cyl:3.liquid=water", "fuel-tank@side:boat.fuel=water", "starter-motor@engine.motor=dragging")]
    [InlineData("two-stroke-3-cdi", "last-thing-done", "serviced", "lead-routing@engine.order=crossed", "coil-ground@cyl:1.bond=open", "unit-ground@engine.bond=open")]
    [InlineData("two-stroke-3-cdi", "last-thing-done", "refuelled", "fuel-tank@side:boat.fuel=water", "tank-vent@side:boat.passage=shut", "fuel-line@side:boat.tightness=apart")]
    [InlineData("four-stroke-2-cdi", "last-thing-done", "laid-over", "cylinder@cyl:1.liquid=oil", "cylinder@cyl:2.liquid=oil")]
    [InlineData("four-stroke-4-inductive", "how-tried", "many", "battery@side:boat.state=low", "cold-start-control@engine.use=over-fuelled", "cylinder@cyl:1.liquid=washed", "cylinder@cyl:4.liquid=washed")]
    public void What_befell_an_engine_raises_all_that_it_bears_on(string layout, string question, string answer, params string[] causes)
    {
        var (before, after) = (Shop.Story(layout, "no-start"), Asked(layout, (question, answer)));
        Assert.All(causes, c => Assert.True(Decibans.Of(after.AsFound(c)) > Decibans.Of(before.AsFound(c)) + 0.5, $"{c}: {before.AsFound(c):0.00000} before, {after.AsFound(c):0.00000} after"));
    }

    [Fact]
    public void Plugs_have_one_age_so_one_found_worn_speaks_for_the_others_and_parts_of_other_ages_do_not()
    {
        double Worn(Story story) => story.AsFound("spark-plug@cyl:1.electrodes=worn");
        double Gummed(Story story) => story.AsFound("carburettor@cyl:1.jets=part-blocked");
        var before = Shop.Story("two-stroke-3-cdi", "misses");
        var after = Shop.Story("two-stroke-3-cdi", "misses").Find("plug-electrodes", "rounded", "cyl:2").Find("plug-gap", "1.6 mm", "cyl:2");
        Assert.True(Decibans.Of(Worn(after)) > Decibans.Of(Worn(before)) + 2);
        Assert.InRange(Gummed(after), 0, Gummed(before));
        Assert.True(after.Diagnosis.BeliefNow().CommonCauses.Single(c => c.Id == "old-plugs").Probability > 0.5);
    }

    /// <summary>What befell the engine moves odds, not how many engines have a fault: before the complaint each prior is that of its file.</summary>
    [Theory]
    [InlineData("two-stroke-3-cdi")]
    [InlineData("four-stroke-4-inductive")]
    public void The_chance_of_a_condition_over_all_engines_is_the_prior_of_its_file_whatever_was_spoken_of(string layout)
    {
        var network = Asked(layout, ("fuel-age", "last-season"), ("last-thing-done", "sank"), ("last-thing-done", "serviced"), ("parts-fitted", "plugs"), ("kept", "salt-water")).Diagnosis.Network;
        Assert.True(network.Answers.Count >= 5);
        var nothing = Inference.Elimination.Run(new Inference.Evidence(network.Network), network.Options with { Wanted = network.Wanted() });
        foreach (var aspect in network.Model.Aspects.Where(a => a.Swayed.Length > 0 && a.Aspect.Given is null))
        {
            var found = nothing.Marginal(network.Conditions.First(aspect));
            for (var s = 0; s < aspect.Prior.Length; s++)
            {
                Assert.Equal(aspect.Prior[s], found[s], 12);
            }
        }
    }

    [Fact]
    public void Hearsay_weighs_less_and_the_last_answer_counts()
    {
        double Stale(params Intake[] said) => said.Aggregate(Shop.Story("two-stroke-3-cdi", "no-start"), (story, i) => story.Record(i)).AsFound("fuel-tank@side:boat.fuel=stale");
        var (old, fresh) = (new Intake("fuel-age", "last-season"), new Intake("fuel-age", "weeks"));
        Assert.True(Stale(fresh) < Stale(fresh with { Hearsay = true }));
        Assert.True(Stale(old with { Hearsay = true }) < Stale(old));
        Assert.Equal(Stale(fresh), Stale(old, fresh), 12);
    }

    [Fact]
    public void What_is_worth_asking_stands_beside_the_first_steps_and_is_not_asked_twice()
    {
        var story = Shop.Story("two-stroke-3-cdi", "no-start");
        var first = story.Diagnosis.Next(1).Questions;
        Assert.Equal("how-it-died", first[0].Id);
        Assert.DoesNotContain(story.Record(new Intake("how-it-died", "stuttered")).Diagnosis.Next(1).Questions, q => q.Id == "how-it-died");
    }

    private static Story Asked(params (string Question, string Answer)[] said) => Asked("two-stroke-3-cdi", said);

    private static Story Asked(string layout, params (string Question, string Answer)[] said) =>
        said.Aggregate(Shop.Story(layout, "no-start"), (story, s) => story.Record(new Intake(s.Question, s.Answer)));
}
