using Undercowl.Diagnosis.Readings;
using Undercowl.Diagnosis.Tests.Fixtures;
using Undercowl.Jobs;
using Xunit;

namespace Undercowl.Diagnosis.Tests.Input;

/// <summary>Numbers that nothing on an engine can have are refused; those that hardly anything has are stored with a warning.</summary>
public sealed class NumberInputTests
{
    private const string Layout = "two-stroke-3-cdi";

    [Theory]
    [InlineData("compression-dry", "-10psi", "cyl:1")]
    [InlineData("plug-gap", "-0.9mm", "cyl:1")]
    [InlineData("charge-coil-ohms", "-500ohm", null)]
    [InlineData("battery-rest-volts", "-12.4V", null)]
    [InlineData("cranking-rpm", "-1rpm", null)]
    public void A_reading_below_0_is_refused(string check, string reading, string? at)
    {
        var story = Shop.Story(Layout, "no-start");
        var refused = Assert.Throws<DiagnosisException>(() => story.Find(check, reading, at));
        Assert.Contains("never below 0", refused.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("compression-dry", "110", "cyl:1", "psi")]
    [InlineData("plug-gap", "0.9", "cyl:1", "mm")]
    [InlineData("charge-coil-ohms", "5e2", null, "kohm")]
    public void A_number_that_could_be_meant_in_several_units_is_refused_without_one(string check, string reading, string? at, string unit)
    {
        var story = Shop.Story(Layout, "no-start");
        var before = story.Job.Entries.Count;
        var refused = Assert.Throws<DiagnosisException>(() => story.Find(check, reading, at));
        Assert.Contains($"{reading} has no unit", refused.Message, StringComparison.Ordinal);
        Assert.Contains(unit, refused.Mend, StringComparison.Ordinal);
        Assert.Equal(before, story.Job.Entries.Count);
    }

    [Theory]
    [InlineData("compression-dry", "0psi", "cyl:1", "0 psi", "no pressure at all")]
    [InlineData("compression-oiled", "0", "cyl:1", "0 kPa", "no pressure at all")]
    [InlineData("plug-gap", "0mm", "cyl:1", "0 mm", "closed")]
    [InlineData("compression-dry", "900bar", "cyl:1", "900 bar", "is the unit right?")]
    [InlineData("plug-gap", "35mm", "cyl:1", "35 mm", "is the unit right?")]
    [InlineData("charge-coil-ohms", "900kohm", null, "900 kohm", "is the unit right?")]
    [InlineData("cranking-rpm", "30000rpm", null, "30000 rpm", "is the unit right?")]
    public void A_reading_that_is_hardly_possible_is_stored_and_named(string check, string reading, string? at, string value, string says)
    {
        var story = Shop.Story(Layout, "no-start").Find(check, reading, at);
        Assert.Contains(story.Job.Entries, e => e.Body is Finding { Value: NumberReading } found && found.Check == check);
        Assert.Contains(story.Warnings, w => w.Contains(value, StringComparison.Ordinal) && w.Contains(says, StringComparison.Ordinal));
        Assert.NotEmpty(story.Diagnosis.BeliefNow().Causes);
    }

    [Theory]
    [InlineData("compression-dry", "110psi", "cyl:1")]
    [InlineData("charge-coil-ohms", "0ohm", null)]
    [InlineData("battery-rest-volts", "0V", null)]
    [InlineData("plug-gap", ".035in", "cyl:1")]
    public void A_reading_that_occurs_is_stored_without_a_word_about_its_size(string check, string reading, string? at) =>
        Assert.DoesNotContain(Shop.Story(Layout, "no-start").Find(check, reading, at).Warnings, w => w.Contains("Withdraw", StringComparison.Ordinal));

    [Theory]
    [InlineData("-5ohm", null, null, "-5 ohm")]
    [InlineData("0ohm", null, null, "0 ohm")]
    [InlineData(null, "-0.5kohm", null, "-0.5 kohm")]
    [InlineData(null, null, "0", "0 ohm")]
    [InlineData("5mm", null, null, "5mm")]
    [InlineData("900ohm", "0.8kohm", null, "900 ohm is above 0.8 kohm")]
    [InlineData("900ohm", "1.2kohm", "1300ohm", "1300 ohm is above 1.2 kohm")]
    [InlineData(null, null, null, "no figure")]
    public void A_figure_that_no_engine_has_is_refused(string? low, string? high, string? nominal, string says)
    {
        var refused = Assert.Throws<DiagnosisException>(() => Figure(low, high, nominal));
        Assert.Contains(says, refused.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("5ohm", "5 ohm")]
    [InlineData("900kohm", "900 kohm")]
    public void A_figure_far_from_the_usual_is_stored_and_named(string low, string value)
    {
        var draft = Figure(low, null, null);
        Assert.IsType<Specs>(Assert.Single(draft.Bodies));
        Assert.Contains(value, Assert.Single(draft.Warnings), StringComparison.Ordinal);
        Assert.Contains("is the unit right?", draft.Warnings[0], StringComparison.Ordinal);
    }

    [Fact]
    public void A_usual_figure_is_stored_without_a_word_and_one_for_a_place_that_is_not_there_is_refused()
    {
        Assert.Empty(Figure("800ohm", "1.2kohm", "1kohm").Warnings);
        Assert.Throws<DiagnosisException>(() => Figure("800ohm", null, null, "charge-coil@cyl:7"));
    }

    [Fact]
    public void Bounds_in_different_units_mean_the_same_as_in_one()
    {
        Assert.Equal(Open("900ohm", "1100ohm"), Open("900ohm", "1.1kohm"), 12);

        static double Open(string low, string high)
        {
            var story = Shop.Story(Layout, "no-start");
            story.Record(OwnFigure.Of(story.Diagnosis, "charge-coil", "charge-coil-ohms", "manual", low, high, null).Bodies[0]);
            return story.Find("charge-coil-ohms", "300ohm").AsFound("charge-coil@engine.winding=open");
        }
    }

    /// <summary>So that a figure beyond what can be measured is noticed, whatever it is of.</summary>
    [Fact]
    public void Every_generic_figure_has_a_check_with_a_range_of_the_same_dimension()
    {
        Assert.NotEmpty(Shop.Knowledge.Specs);
        Assert.All(Shop.Knowledge.Specs, s => Assert.Contains(Shop.Knowledge.Checks, c => c.Likelihood.Reference == s.Item && c.Number is { } form && form.Unit == s.Unit));
    }

    private static Draft Figure(string? low, string? high, string? nominal, string part = "charge-coil") =>
        OwnFigure.Of(Shop.Story(Layout, "no-start").Diagnosis, part, "charge-coil-ohms", "manual", low, high, nominal);
}
