using Undercowl.Diagnosis.Tests.Fixtures;
using Undercowl.Jobs;
using Xunit;

namespace Undercowl.Diagnosis.Tests.Scenarios;

/// <summary>Derived: a slip in typing is told to the user, and then the job goes on; nobody can take a line out of a log.</summary>
public sealed class BeyondTheLawTests
{
    [Theory]
    [InlineData("charge-coil-ohms", "0.0000001 ohm", null)]
    [InlineData("charge-coil-ohms", "9000000000 Mohm", null)]
    [InlineData("battery-rest-volts", "200 V", null)]
    [InlineData("battery-rest-volts", "12600 mV", null)]
    [InlineData("compression-dry", "900 bar", "cyl:1")]
    [InlineData("trigger-peak", "20000 V", "cyl:1")]
    public void A_value_that_its_correction_does_not_reach_leaves_a_belief(string check, string reading, string? at)
    {
        var story = Shop.Story("two-stroke-3-cdi", "no-start")
            .Record(new Ambient(Measured.Of("-5", "°C"), Altitude: Measured.Of("1500", "m")))
            .Find("cranking-rpm", "300 rpm")
            .Find(check, reading, at);
        Assert.All(story.Diagnosis.BeliefNow().Causes, c => Assert.InRange(c.Now, 0, 1));
    }

    /// <summary>Peak volts are carried from the cranking speed found; one that is none is as good as not said.</summary>
    [Theory]
    [InlineData("8 rpm")]
    [InlineData("0 rpm")]
    [InlineData("20000 rpm")]
    public void A_speed_that_no_peak_voltage_can_be_carried_from_is_not_used(string speed)
    {
        var story = Shop.Story("two-stroke-3-cdi", "no-start").Find("cranking-rpm", "300 rpm").Find("trigger-peak", "1.5 V", "cyl:1");
        var before = Likelihood(story);
        Assert.Equal(before, Likelihood(story.Find("cranking-rpm", speed)));
        Assert.NotEqual(before, Likelihood(story.Find("cranking-rpm", "150 rpm")));
    }

    /// <summary>The speed with the same deeds done counts, whenever it was written down.</summary>
    [Fact]
    public void Peak_volts_are_carried_from_the_speed_found_with_the_same_deeds_done()
    {
        var story = Shop.Story("two-stroke-3-cdi", "no-start").Find("trigger-peak", "1.5 V", "cyl:1").Find("cranking-rpm", "300 rpm");
        var before = Likelihood(story);
        story.Remedy("replace-starter-motor").Find("cranking-rpm", "450 rpm");
        Assert.Equal(before, Likelihood(story));
    }

    /// <summary>The reading of the trigger's peak volts, over its reference, as it is compared.</summary>
    private static double Likelihood(Story story)
    {
        var laid = story.Diagnosis.Network.Laid.Single(l => l.Check.Id == "trigger-peak");
        return Readings.DensityReadings.Ratio(laid.Check, ((NumberReading)laid.Reading.Value).Number, laid.Reading.Circumstances)!.Value;
    }
}
