using Undercowl.Knowledge.Tests.Fixtures;

namespace Undercowl.Knowledge.Tests.Compiler;

/// <summary>Broken YAML, and records that do not fit their types. Derived: each row breaks one line of a valid file.</summary>
public sealed class ShapeFaultTests
{
    [Theory]
    [InlineData("parts/ring.yaml", "prior:", "prioor:", "prioor", "\"prioor\" is not known here", "did you mean prior?", 2)]
    [InlineData("sources.yaml", "  cite: invented for a test", "", "- id: invented", "\"cite\" is missing", "add cite: a text")]
    [InlineData("sources.yaml", "kind: estimate", "kind: estimat", "kind", "estimat is not a source kind", "did you mean estimate?")]
    [InlineData("parts/ring.yaml", "prior: 0.07", "prior: seldom", "prior", "prior is seldom, but a number is wanted", "write a number")]
    [InlineData("parts/ring.yaml", "{oil: \"yes\"}", "{oil: true}", "effects", "oil is true, but a text is wanted", "put quotes around it: \"true\"")]
    [InlineData("layouts/two.yaml", "strokes: two", "strokes: 2", "strokes", "strokes is 2, but a text is wanted", "put quotes around it: \"2\"")]
    [InlineData("layouts/two.yaml", "cylinders: 2", "cylinders: 2.5", "cylinders: 2", "a whole number is wanted", "whole")]
    [InlineData("parts/ring.yaml", "name: piston ring\naspects", "name:\naspects", "name:", "name has no value", "take the line out")]
    [InlineData("parts/ring.yaml", "name: piston ring", "name: \"\"", "name: \"\"", "name is empty", "write something")]
    [InlineData("layouts/two.yaml", "at: each cyl\n", "at: []\n", "at: []", "at is empty", "write something")]
    [InlineData("interlocks/fuel-vapour.yaml", "until-known: true", "until-known: yes", "until-known", "until-known is yes, but true or false is wanted", "write true or false")]
    [InlineData("specs.yaml", "low: 80", "low: .inf", "low", ".inf is not a finite number", "write a number")]
    [InlineData("parts/ring.yaml", "name: piston ring", "name: ring\nname: piston ring", "name: piston ring", "\"name\" is there already, on line 2", "keep one")]
    [InlineData("parts/ring.yaml", "name: piston ring", "name: &here piston ring", "&here", "anchor", "take it out")]
    [InlineData("parts/ring.yaml", "name: piston ring", "name: !!str piston ring", "!!str", "is a tag", "take it out")]
    [InlineData("parts/ring.yaml", "name: piston ring", "name: *there", "*there", "*there stands for something", "write it out")]
    [InlineData("parts/ring.yaml", "name: piston ring", "name: piston ring\n---\nid: other", "---", "a second document", "one document")]
    [InlineData("parts/ring.yaml", "id: ring\n", "id: rings\n", "id: rings", "the file is named ring.yaml", "rings.yaml", 3)]
    [InlineData("checks/runs.yaml", "hazards: [running, runaway]", "hazards: running", "hazards", "hazards is running, but a list is wanted", "write a list")]
    [InlineData("quantities/kv.yaml", "map: {\"yes\": none}", "map: [none]", "map", "map is a list, but names with values is wanted", "names with values")]
    [InlineData("sources.yaml", "kind: estimate", "kind: guess", "kind", "guess is not a source kind", "use one of: common-practice, estimate, from-memory, publication")]
    [InlineData("parts/ring.yaml", "name: piston ring", "name: [piston ring", "[piston ring", "this is no YAML", "open bracket")]
    public void A_malformed_file_is_told_by_line_with_the_mend(string file, string old, string changed, string line, string message, string mend, int problems = 1) =>
        SmallKnowledge.Break(file, old, changed, line, message, mend, problems);
}
