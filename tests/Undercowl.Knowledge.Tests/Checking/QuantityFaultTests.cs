using Undercowl.Knowledge.Tests.Fixtures;

namespace Undercowl.Knowledge.Tests.Checking;

/// <summary>Derived: each row breaks one line of valid knowledge, and exactly that line is told.</summary>
public sealed class QuantityFaultTests
{
    [Theory]
    [InlineData("quantities/gap.yaml", "levels: [right, wide]", "levels: [right, wide, wider, widest, open]", "levels", "gap has 5 levels", "2 to 4")]
    [InlineData("quantities/gap.yaml", "levels: [right, wide]", "levels: [right, wide, wide]", "levels", "two of the level wide", "another id")]
    [InlineData("quantities/lanyard.yaml", "levels: [\"no\", \"yes\"]", "levels: [\"no\", partly, \"yes\"]", "levels", "has 2 levels, but lanyard has 3", "list 2")]
    [InlineData("quantities/firing.yaml", "combine: count-fold\ninputs:\n  - quantity: fires", "combine: count-fold\ninputs:\n  - quantity: fires\n  - quantity: spark", "inputs", "over one quantity", "keep one")]
    [InlineData("quantities/firing.yaml", "  - quantity: fires", "  - quantity: stopped", "inputs", "stopped is of the whole engine and cannot be counted", "per: cyl")]
    [InlineData("quantities/firing.yaml", "per: engine", "per: cyl", "per", "of the whole engine", "per: engine", 2)]
    [InlineData("quantities/stopped.yaml", "quantity: lanyard", "quantity: oil", "quantity: oil", "oil is of one cylinder", "count-fold")]
    [InlineData("quantities/kv.yaml", "quantity: stopped", "quantity: stoped", "stoped", "no quantity stoped", "did you mean stopped?", 2)]
    [InlineData("quantities/kv.yaml", "    map: {\"yes\": none}\n", "", "quantity: stopped", "whatever the level of stopped, it leaves kv at its best", "add a map")]
    [InlineData("quantities/fires.yaml", "  - quantity: oil\n", "  - quantity: oil\n    map: {\"yes\": dead}\n", "map", "a map is heard only by", "take it out")]
    [InlineData("quantities/lanyard.yaml", "combine: any", "combine: any\ninputs: [{quantity: stopped}]", "inputs", "lanyard depends on itself: lanyard from stopped from lanyard", "take one", 2)]
    [InlineData("quantities/fires.yaml", "  - {is: fires}\n", "", "rows", "no row for spark: good, oil: no", "- {is: fires}")]
    [InlineData("quantities/fires.yaml", "  - {is: fires}", "  - {is: lit}", "is: lit", "no level of fires, lit", "use one of: dead, fires")]
    [InlineData("quantities/fires.yaml", "{spark: none}", "{spark: gone}", "gone", "no level of spark, gone", "did you mean none?", 2)]
    [InlineData("quantities/fires.yaml", "{spark: none}", "{sparc: none}", "sparc", "no input of fires, sparc", "did you mean spark?", 3)]
    [InlineData("quantities/fires.yaml", "{when: {spark: weak, oil: \"yes\"}, is: dead}", "{when: {spark: none, oil: \"yes\"}, is: dead}", "oil: \"yes\"", "leave nothing for this one", "move it up")]
    [InlineData("quantities/stopped.yaml", "  - quantity: lanyard", "  - quantity: lanyard\nrows: [{is: \"no\"}]", "rows", "only when combine is table", "combine: table")]
    [InlineData("quantities/spark.yaml", "  - quantity: gap\n", "", "inputs", "three inputs", "in this order")]
    [InlineData("quantities/gap.yaml", "value: 0.8, unit: mm", "value: 0.8, unit: in", "", "gap stands for the gap, but its levels are not all told in mm", "unit: mm")]
    [InlineData("quantities/gap.yaml", "{level: right, value: 0.8", "{level: right, value: 0", "", "no number above 0 for its best level in the layout two", "level right of gap")]
    [InlineData("quantities/gap.yaml", "level: wide,", "level: wid,", "wid,", "no level of gap, wid", "did you mean wide?")]
    [InlineData("quantities/gap.yaml", "value: 1.5, unit: mm, source: invented", "value: 1.5, unit: mm, source: inventory", "inventory", "no source inventory", "use one of: invented")]
    [InlineData("quantities/spark.yaml", "  - {name: good-at, value: 3, unit: \"1\", source: invented}\n", "", "id: spark", "parameter good-at of spark is missing", "add it")]
    [InlineData("quantities/spark.yaml", "name: weak-at", "name: weakat", "weakat", "no parameter of a spark, weakat", "did you mean weak-at?", 2)]
    [InlineData("quantities/spark.yaml", "value: 40, unit: H, source: invented, only: {strokes: two}", "value: 40, unit: H, source: invented", "value: 80", "holds always, so this one never counts", "last")]
    [InlineData("quantities/spark.yaml", "combine: spark-in-air", "combine: spark-in-cylinder", "id: spark", "parameter pressure-bar of spark is missing", "add it", 2)]
    [InlineData("quantities/kv.yaml", "{\"yes\": none}", "{\"yes\": no}", "map", "no level of kv, no", "use one of: none, strong, weak", 2)]
    [InlineData("quantities/kv.yaml", "{\"yes\": none}", "{yess: none}", "map", "no level of stopped, yess", "did you mean yes?", 2)]
    [InlineData("quantities/spark.yaml", "levels: [good, weak, none]", "levels: [good, none]", "levels", "has 3 levels, but spark has 2", "list 3", 3)]
    public void A_malformed_quantity_is_told(string file, string old, string changed, string line, string message, string mend, int problems = 1)
    {
        if (line.Length > 0)
        {
            SmallKnowledge.Break(file, old, changed, line, message, mend, problems);
            return;
        }

        // The numbers of an input are asked for by the spark, and told there.
        using var small = new SmallKnowledge();
        small.Change(file, old, changed);
        var problem = Assert.Single(small.Compile().Problems);
        Assert.Equal((small.At("quantities/spark.yaml"), small.LineOf("quantities/spark.yaml", "quantity: gap")), (problem.File, problem.Line));
        Assert.Contains(message, problem.Message, StringComparison.Ordinal);
        Assert.Contains(mend, problem.Mend, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("oil")]
    [InlineData("gap")]
    [InlineData("fires")]
    public void A_quantity_without_levels_is_told_by_itself_and_breaks_nothing_else(string quantity)
    {
        using var small = new SmallKnowledge();
        var levels = small.Read($"quantities/{quantity}.yaml").Split('\n').Single(l => l.StartsWith("levels:", StringComparison.Ordinal));
        small.Change($"quantities/{quantity}.yaml", levels, "levels: []");
        Assert.Contains(small.Compile().Problems, p => p.File == small.At($"quantities/{quantity}.yaml") && p.Line == 4 && p.Message == $"{quantity} has 0 levels");
    }
}
