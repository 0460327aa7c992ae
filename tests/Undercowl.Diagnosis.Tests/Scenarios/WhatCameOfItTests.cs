using Undercowl.Diagnosis.Tests.Fixtures;
using Undercowl.Jobs;
using Xunit;

namespace Undercowl.Diagnosis.Tests.Scenarios;

/// <summary>What came of a remedy moves belief, noted with it or told later; what an exchange did may be told in a word. Common practice.</summary>
public sealed class WhatCameOfItTests
{
    private const string Key = "key-switch@side:boat.run-contact=stopped";
    private const string Coil = "ignition-coil@cyl:2.winding=open";

    [Fact]
    public void A_cure_convicts_what_was_replaced_and_no_change_acquits_it()
    {
        var silent = Dead().Remedy("replace-key-switch").AsFound(Key);
        Assert.True(Dead().Remedy("replace-key-switch", result: "cured").AsFound(Key) > 5 * silent);
        Assert.True(Dead().Remedy("replace-key-switch", result: "no-change").AsFound(Key) < silent / 5);
    }

    [Fact]
    public void Told_later_it_weighs_the_same_and_the_last_word_counts()
    {
        var noted = Dead().Remedy("replace-key-switch", result: "cured").AsFound(Key);
        var later = Dead().Remedy("replace-key-switch");
        Assert.Equal(noted, later.Record(Drafting.Result(later.Diagnosis, "cured").Bodies[0]).AsFound(Key), 12);
        var corrected = Dead().Remedy("replace-key-switch", result: "no-change");
        Assert.Equal(noted, corrected.Record(Drafting.Result(corrected.Diagnosis, "cured").Bodies[0]).AsFound(Key), 12);
    }

    [Fact]
    public void Better_and_not_gone_speaks_for_what_was_replaced_and_for_another_fault_besides()
    {
        Story Replaced(string result) => Shop.Story("two-stroke-3-cdi", "misses").Find("spark-to-ground", "never", "cyl:2").Remedy("replace-ignition-coil", "cyl:2", result: result);
        Assert.True(Replaced("in-part").AsFound(Coil) > 5 * Replaced("no-change").AsFound(Coil));
        Assert.True(Replaced("in-part").Now(Coil) < 0.1);
    }

    [Theory]
    [InlineData("results/noticed/value")]
    [InlineData("results/hoped/value")]
    public void How_often_an_engine_that_is_still_wrong_is_called_better_is_a_number_of_the_knowledge(string number)
    {
        var story = Dead().Remedy("replace-key-switch", result: "no-change");
        Assert.Contains(story.Diagnosis.Audit(Key).Factors, f => f.Address == number && f.Source == "est-results");
        var instead = Shop.Workbench.With([(number, 0.3)]).Open(story.Job).Belief.Causes().Single(c => c.Cause == Key).AsFound;
        Assert.True(Math.Abs(instead / story.AsFound(Key) - 1) > 0.05, $"{instead} {story.AsFound(Key)}");
    }

    [Fact]
    public void Gone_for_a_time_raises_what_comes_and_goes_above_what_is_always_there()
    {
        const string Loose = "trigger-connector@engine.pins=loose", Open = "trigger@engine.common=open";
        Story Replaced(string? result) => Dead().Remedy("replace-solenoid", result: result);
        var (told, silent) = (Replaced("for-a-time"), Replaced(null));
        Assert.True(told.AsFound(Loose) / told.AsFound(Open) > 10 * silent.AsFound(Loose) / silent.AsFound(Open), $"{told.AsFound(Loose)} {told.AsFound(Open)} {silent.AsFound(Loose)} {silent.AsFound(Open)}");
    }

    [Fact]
    public void What_is_seen_after_something_else_went_wrong_says_little_of_the_engine_as_found()
    {
        const string Sheared = "flywheel-key@engine.fit=sheared";
        Story Looked(string? result) => Shop.Story("two-stroke-3-cdi", "misses").Remedy("clean-carburettor", "cyl:1", result: result)
            .Find("starting-test", "cranks-only").Find("flywheel-key-look", "sheared");
        var (other, same) = (Looked("new-fault"), Looked(null));
        Assert.True(other.Now(Sheared) > 2 * other.AsFound(Sheared), $"{other.Now(Sheared)} {other.AsFound(Sheared)} {same.Now(Sheared)} {same.AsFound(Sheared)}");
        Assert.True(other.AsFound(Sheared) < 0.7 * same.AsFound(Sheared), $"{other.AsFound(Sheared)} {same.AsFound(Sheared)}");
        Assert.Equal(same.Now(Sheared), same.AsFound(Sheared), 9);
    }

    [Fact]
    public void Why_counts_it_among_what_moved_a_cause_and_it_proves_nothing()
    {
        var story = Dead().Remedy("replace-key-switch", result: "cured");
        var why = story.Diagnosis.Why(Key);
        Assert.Contains(why.Weights, w => w.What == "Replace the key switch: cured" && w.Stepwise > 5);
        Assert.Equal(why.PosteriorDecibans - why.PriorDecibans, why.Weights.Sum(w => w.Stepwise), 1e-9);
        Assert.Contains(story.Diagnosis.Proof().Missing, m => m.StartsWith("No good reading of", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("moved", "never", "always")]
    [InlineData("stayed", "always", "never")]
    [InlineData("cleared", "always", "always")]
    public void An_exchange_told_in_a_word_is_the_readings_that_it_stands_for(string then, string one, string two)
    {
        Story Read() => Shop.Story("two-stroke-3-cdi", "misses").Find("spark-to-ground", "never", "cyl:2").Find("spark-to-ground", "always", "cyl:1");
        var told = Read().Swap("ignition-coil", "cyl:1", "cyl:2", then);
        var read = Read().Swap("ignition-coil", "cyl:1", "cyl:2").Find("spark-to-ground", one, "cyl:1").Find("spark-to-ground", two, "cyl:2");
        Assert.Equal(Beliefs(read), Beliefs(told));
    }

    [Fact]
    public void Banks_are_traded_cylinder_by_cylinder()
    {
        var story = Shop.Story("two-stroke-6-banks", "misses").FindAll("spark-to-ground", "always", [1, 3, 5]).FindAll("spark-to-ground", "never", [2, 4, 6]);
        story.Swap("charge-coil", "bank:A", "bank:B", "moved");
        var after = story.Job.Entries.Select(e => e.Body).OfType<Finding>().TakeLast(6).ToDictionary(f => f.Place.Text, f => ((ChoiceReading)f.Value).Choice);
        Assert.All([1, 3, 5], c => Assert.Equal("never", after[$"cyl:{c}"]));
        Assert.All([2, 4, 6], c => Assert.Equal("always", after[$"cyl:{c}"]));
        Verdict.Is(story, "charge-coil@bank:B.*");
    }

    [Fact]
    public void Outputs_are_exchanged_of_one_unit_among_several_and_not_between_two()
    {
        var story = Shop.Story("two-stroke-4-two-units", "misses");
        story.Swap("control-unit", "cyl:1", "cyl:2").Swap("control-unit", "pair:1+2", "pair:3+4");
        var refused = Assert.Throws<DiagnosisException>(() => story.Swap("control-unit", "cyl:2", "cyl:3"));
        Assert.Contains("two outputs of one part", refused.Mend, StringComparison.Ordinal);
    }

    [Fact]
    public void A_check_at_a_cylinder_exchanges_the_part_that_serves_it()
    {
        var story = Shop.Story("four-stroke-4-inductive", "misses");
        story.Find(new SaidFinding("pair-coil-swap-spark", "never", "cyl:1") { With = "pair:2+3" });
        Assert.Contains(story.Job.Entries, e => e.Body is Swap { Part: "double-coil", A.Text: "pair:1+4", B.Text: "pair:2+3" });
    }

    private static (string, double, double)[] Beliefs(Story story) => [.. story.Causes.Select(c => (c.Cause, Math.Round(c.AsFound, 12), Math.Round(c.Now, 12)))];

    private static Story Dead()
    {
        var story = Shop.Story("two-stroke-3-cdi", "no-start");
        return story.FindAll("spark-to-ground", "never", story.Cylinders);
    }
}
