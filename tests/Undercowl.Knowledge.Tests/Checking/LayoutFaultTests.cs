using Undercowl.Knowledge.Tests.Fixtures;

namespace Undercowl.Knowledge.Tests.Checking;

/// <summary>Derived: each row breaks one line of valid knowledge, and exactly that line is told.</summary>
public sealed class LayoutFaultTests
{
    private const string File = "layouts/two.yaml";

    [Theory]
    [InlineData("cylinders: 2", "cylinders: 13", "cylinders", "13 cylinders", "from 1 to 12")]
    [InlineData("cylinders: 2", "cylinders: 0", "cylinders", "0 cylinders", "from 1 to 12")]
    [InlineData("[1, 2]", "[1, 1]", "firing-order", "does not name every cylinder once", "numbers 1 to 2")]
    [InlineData("[1, 2]", "[1, 2, 3]", "firing-order", "does not name every cylinder once", "numbers 1 to 2")]
    [InlineData("  B: [2]", "  B: [1]", "B:", "cylinder 1 is not there or in two banks", "one bank")]
    [InlineData("  B: [2]", "  b: [2]", "b: [2]", "\"b\" is not a bank", "capital letter")]
    [InlineData("part: coil", "part: coill", "coill", "there is no part kind coill", "did you mean coil?")]
    [InlineData("at: each cyl\n", "at: every cyl\n", "every cyl", "every cyl is not a place", "each cyl")]
    [InlineData("cyl:2]", "cyl:3]", "cyl:3", "no cylinder 3", "from 1 to 2")]
    [InlineData("cyl:2]", "cyl:02]", "cyl:02", "cyl:02 does not name cylinders", "cyl:2")]
    [InlineData("cyl:2]", "cyl:1]", "part: plug", "plug@cyl:1 is there already", "take one")]
    [InlineData("cyl:2]", "pair:2+1]", "pair:2+1", "ascending", "pair:1+2")]
    [InlineData("cyl:2]", "pair:2]", "pair:2", "a pair has not 1 cylinders", "pair:1+4")]
    [InlineData("cyl:2]", "group:2]", "group:2", "a group has not 1 cylinders", "group:1+2+3")]
    [InlineData("cyl:2]", "bank:C]", "bank:C", "no bank C", "use one of: A, B")]
    [InlineData("cyl:2]", "side:shore]", "side:shore", "no side shore", "side:boat")]
    [InlineData("id: two", "id: Two", "id: Two", "\"Two\" is not an id", "such as two", 2)]
    public void A_malformed_layout_is_told(string old, string changed, string line, string message, string mend, int problems = 1) =>
        SmallKnowledge.Break(File, old, changed, line, message, mend, problems);

    [Fact]
    public void A_layout_that_no_complaint_is_made_of_is_told()
    {
        using var small = new SmallKnowledge();
        small.Write("layouts/other.yaml", "id: other\nname: other\ncylinders: 2\nattributes: {strokes: four}\nparts: [{part: coil, at: engine}]\n");
        small.Change("complaints/no-start.yaml", "healthy: [all]", "only: {strokes: two}\nhealthy: [all]");
        var problem = Assert.Single(small.Compile().Problems);
        Assert.Equal((small.At("layouts/other.yaml"), "no complaint is made of an engine like other"), (problem.File, problem.Message));
    }

    [Theory]
    [InlineData("checks/runs.yaml", "at: engine", "at: engine\nonly: {stroke: two}", "only", "no layout with the attribute stroke", "did you mean strokes?")]
    [InlineData("parts/plug.yaml", "{strokes: two}", "{strokes: [two, tow]}", "only", "no layout whose strokes is tow", "did you mean two?")]
    [InlineData("quantities/spark.yaml", "{strokes: two}", "{srokes: two}", "srokes", "no layout with the attribute srokes", "did you mean strokes?")]
    [InlineData("remedies/new-coil.yaml", "parts: 60", "parts: 60\nonly: {fuel: gas}", "only", "no layout with the attribute fuel", "use one of: strokes")]
    [InlineData("specs.yaml", "low: 80", "low: 80\n  only: {fuel: gas}", "only", "no layout with the attribute fuel", "use one of: strokes")]
    public void A_condition_on_layouts_that_none_can_meet_is_told(string file, string old, string changed, string line, string message, string mend) =>
        SmallKnowledge.Break(file, old, changed, line, message, mend);
}
