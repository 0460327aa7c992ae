using Undercowl.Diagnosis.Tests.Fixtures;
using Xunit;

namespace Undercowl.Diagnosis.Tests.Scenarios;

/// <summary>The dead cylinders are exactly those that share a part: it is that part, its connector, its ground or its feed.</summary>
public sealed class SharedPartTests
{
    [Fact]
    public void The_two_cylinders_of_a_double_ended_coil()
    {
        var story = Dead("four-stroke-4-inductive", [1, 4]);
        Verdict.Is(story, "double-coil@pair:1+4.*", "coil-driver@pair:1+4.*", "coil-connector@pair:1+4.*");
        story.ProposesSoon("pair-coil-swap-spark");
    }

    [Fact]
    public void A_bank_with_its_own_charge_coil_and_trigger()
    {
        var story = Dead("two-stroke-6-banks", [1, 3, 5]);
        Verdict.Is(story, "charge-coil@bank:A.*", "charge-connector@bank:A.*", "trigger@bank:A.*", "trigger-connector@bank:A.*");
        story.ProposesFirst("charge-peak", "charge-peak-unloaded", "trigger-peak", "trigger-ohms", "charge-coil-ohms", "charge-connector-look", "trigger-connector-look");
    }

    [Fact]
    public void Two_cylinders_behind_one_connector()
    {
        var story = Dead("two-stroke-6-banks", [3, 4]);
        Verdict.Is(story, "output-connector@group:3+4.*");
        Assert.All(story.Next(3), p => Assert.Contains(p.Place, (string[])["cyl:3", "cyl:4", "group:3+4"]));
        story.Proposes(6, p => p.Id is "spark-wiggle" or "group-connector-look" or "clean-group-connector", "the connector handled, looked at or cleaned");
    }

    [Fact]
    public void A_bank_behind_one_feed()
    {
        var story = Dead("four-stroke-8-inductive", [2, 4, 6, 8]);
        Verdict.Is(story, "coil-feed@bank:B.*");
        story.ProposesFirst("coil-feed-volts", "mend-coil-feed");
    }

    [Fact]
    public void All_cylinders_of_one_charge_coil_and_control_unit()
    {
        var story = Dead("two-stroke-3-cdi", [1, 2, 3]).FindAll("spark-stop-wire-off", "never", [1, 2, 3]).Find("cranking-rpm", "310rpm").Find("tester-earth", "proven");
        Verdict.Is(
            story,
            "charge-coil@engine.*", "charge-connector@engine.*", "trigger@engine.common=*", "trigger-connector@engine.*", "control-unit@engine.electronics=*",
            "unit-ground@engine.*", "flywheel-magnets@engine.*");
        story.ProposesFirst("charge-peak", "charge-peak-unloaded", "unit-peak", "trigger-peak");
    }

    private static Story Dead(string layout, int[] cylinders)
    {
        var story = Shop.Story(layout, cylinders.Length == new Workbench(Shop.Knowledge, "").Layout(layout).Cylinders ? "no-start" : "misses");
        return story
            .FindAll("spark-to-ground", "always", story.Cylinders.Except(cylinders))
            .FindAll("spark-to-ground", "never", cylinders);
    }
}
