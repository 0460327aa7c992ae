using CsCheck;

namespace Undercowl.Knowledge.Tests.Layouts;

public sealed class LayoutPlacesTests
{
    private static readonly EngineLayout Six = new()
    {
        Id = "six",
        Name = "six",
        Cylinders = 6,
        Banks = new() { ["A"] = [1, 3, 5], ["B"] = [6, 4, 2] },
        Parts =
        [
            new() { Part = "stop-switch", At = new(["engine"]) },
            new() { Part = "battery", At = new(["side:boat"]) },
            new() { Part = "charge-coil", At = new(["bank:A", "bank:B"]) },
            new() { Part = "ignition-coil", At = new(["pair:1+4", "group:2+3+5", "cyl:6"]) },
            new() { Part = "spark-plug", At = new(["each cyl"]) },
            new() { Part = "stray", At = new(["cyl:7"]) },
        ],
    };

    // derived from the place grammar.
    [Fact]
    public void A_layout_has_its_parts_at_their_places() =>
        Assert.Equal(
            [
                "stop-switch@engine 1,2,3,4,5,6", "battery@side:boat 1,2,3,4,5,6", "charge-coil@bank:A 1,3,5", "charge-coil@bank:B 2,4,6",
                "ignition-coil@pair:1+4 1,4", "ignition-coil@group:2+3+5 2,3,5", "ignition-coil@cyl:6 6",
                "spark-plug@cyl:1 1", "spark-plug@cyl:2 2", "spark-plug@cyl:3 3", "spark-plug@cyl:4 4", "spark-plug@cyl:5 5", "spark-plug@cyl:6 6",
            ],
            LayoutPlaces.Of(Six).Select(p => $"{p.Id} {string.Join(',', p.Cylinders)}"));

    [Fact]
    public void An_output_is_named_by_the_cylinder_it_serves()
    {
        var coil = new PartPlace("ignition-coil", "pair:1+4", [1, 4]);
        Assert.Equal("ignition-coil@pair:1+4/4", coil.Output(4));
        Assert.Throws<ArgumentOutOfRangeException>(() => coil.Output(2));
    }

    [Theory]
    [InlineData("engine:1")]
    [InlineData("each cyl")]
    [InlineData("cyl")]
    [InlineData("cyl:")]
    [InlineData("cyl:+1")]
    [InlineData("cyl: 1")]
    [InlineData("cyl:1+2")]
    [InlineData("pair:1+2+3")]
    [InlineData("pair:4+1")]
    [InlineData("pair:1+1")]
    [InlineData("group:1+7")]
    [InlineData("bank:C")]
    [InlineData("side:port")]
    [InlineData("Cyl:1")]
    [InlineData("")]
    public void What_is_no_place_of_the_layout_is_refused(string place) => Assert.False(LayoutPlaces.TryCylinders(Six, place, out _));

    [Fact]
    public void Any_ascending_cylinders_of_the_engine_are_a_place_and_any_other_order_is_not() =>
        Gen.Int[1, 6].Array[2, 5].Sample(
            cylinders =>
            {
                var ascending = cylinders.Zip(cylinders.Skip(1)).All(p => p.First < p.Second);
                return LayoutPlaces.TryCylinders(Six, "group:" + string.Join('+', cylinders), out var served) == ascending && (!ascending || served.SequenceEqual(cylinders));
            },
            seed: "0000KOIPe647");
}
