using Undercowl.Diagnosis.Tests.Fixtures;
using Xunit;

namespace Undercowl.Diagnosis.Tests.Scenarios;

/// <summary>No spark on one cylinder: the coil is exchanged with a neighbour's, and either the dead cylinder moves or it stays.</summary>
public sealed class OneDeadCylinderTests
{
    [Theory]
    [InlineData("two-stroke-3-cdi")]
    [InlineData("two-stroke-6-banks")]
    [InlineData("four-stroke-8-inductive")]
    public void With_wires_wiggled_and_still_dead_an_exchange_with_a_neighbour_is_proposed(string layout) =>
        SecondDead(layout).Find("spark-wiggle", "never", "cyl:2").Proposes(3, p => p.Kind == "swap" && (p.Place == "cyl:2" || p.With == "cyl:2"), "an exchange with cylinder 2");

    [Theory]
    [InlineData("two-stroke-3-cdi")]
    [InlineData("two-stroke-6-banks")]
    [InlineData("four-stroke-8-inductive")]
    public void The_dead_cylinder_moves_with_the_coil_so_it_is_the_coil(string layout)
    {
        var story = SecondDead(layout)
            .Swap("ignition-coil", "cyl:2", "cyl:3")
            .Find("spark-to-ground", "always", "cyl:2")
            .Find("spark-to-ground", "never", "cyl:3");
        Verdict.Is(story, "ignition-coil@cyl:2.*");
        story.Proposes(5, p => p.Id == "replace-ignition-coil" && p.Place == "cyl:3", "a new coil where the old one now sits");
        Assert.Equal("replace-ignition-coil", story.Next(8).First(p => p.Kind == "remedy").Id);
    }

    [Theory]
    [InlineData("two-stroke-3-cdi")]
    [InlineData("two-stroke-6-banks")]
    [InlineData("four-stroke-8-inductive")]
    public void The_dead_cylinder_stays_so_it_is_not_the_coil(string layout)
    {
        var story = SecondDead(layout)
            .Swap("ignition-coil", "cyl:2", "cyl:3")
            .Find("spark-to-ground", "never", "cyl:2")
            .Find("spark-to-ground", "always", "cyl:3");
        string[] path = layout switch
        {
            "two-stroke-3-cdi" => ["trigger@engine/2.*", "control-unit@engine/2.*", "coil-connector@cyl:2.*", "coil-ground@cyl:2.*", "plug-lead@cyl:2.*", "plug-cap@cyl:2.*", "unlisted@cyl:2.spark=*"],
            "two-stroke-6-banks" => ["trigger@bank:B/2.*", "control-unit@engine/2.*", "coil-ground@cyl:2.*", "plug-lead@cyl:2.*", "unlisted@cyl:2.spark=*"],
            _ => ["coil-driver@cyl:2.*", "coil-connector@cyl:2.*", "unlisted@cyl:2.spark=*"],
        };
        Verdict.Is(story, path);
        Assert.DoesNotContain(story.Next(), p => p.Id is "replace-ignition-coil" or "coil-swap-spark");
        Assert.All(story.Next(2), p => Assert.True(p.Place is "cyl:2", $"{p.Id} at {p.Place} is not on the way to cylinder 2"));
    }

    [Fact]
    public void On_double_ended_coils_the_pair_is_exchanged_and_the_dead_pair_moves()
    {
        var story = Shop.Story("four-stroke-4-inductive", "misses")
            .FindAll("spark-to-ground", "always", [2, 3])
            .FindAll("spark-to-ground", "never", [1, 4]);
        story.ProposesSoon("pair-coil-swap-spark");
        story.Swap("double-coil", "pair:1+4", "pair:2+3")
            .FindAll("spark-to-ground", "always", [1, 4])
            .FindAll("spark-to-ground", "never", [2, 3]);
        Verdict.Is(story, "double-coil@pair:1+4.*", "double-coil@pair:1+4/*");
    }

    [Fact]
    public void On_double_ended_coils_the_dead_pair_stays_so_it_is_not_the_coil()
    {
        var story = Shop.Story("four-stroke-4-inductive", "misses")
            .FindAll("spark-to-ground", "always", [2, 3])
            .FindAll("spark-to-ground", "never", [1, 4])
            .Swap("double-coil", "pair:1+4", "pair:2+3")
            .FindAll("spark-to-ground", "never", [1, 4])
            .FindAll("spark-to-ground", "always", [2, 3]);
        Verdict.Is(story, "coil-driver@pair:1+4.*", "coil-connector@pair:1+4.*");
        Assert.DoesNotContain(story.Next(), p => p.Id is "replace-double-coil" or "pair-coil-swap-spark");
        Assert.All(story.Next(3), p => Assert.Contains(p.Id, (string[])["unit-peak", "clean-coil-connector", "coil-connector-look", "coil-wire-look", "mend-coil-wire", "mend-coil-driver"]));
    }

    [Fact]
    public void On_double_ended_coils_one_dead_cylinder_of_a_pair_is_its_own_end_or_lead()
    {
        var story = Shop.Story("four-stroke-4-inductive", "misses")
            .FindAll("spark-to-ground", "always", [1, 2, 3])
            .Find("spark-to-ground", "never", "cyl:4")
            .Find(new("lead-swap-spark", "never", "cyl:4") { With = "cyl:3" });
        Verdict.Is(story, "double-coil@pair:1+4/4.*", "unlisted@cyl:4.spark=*");
    }

    private static Story SecondDead(string layout)
    {
        var story = Shop.Story(layout, "misses");
        return story
            .FindAll("spark-to-ground", "always", story.Cylinders.Where(c => c != 2))
            .Find("spark-to-ground", "never", "cyl:2");
    }
}
