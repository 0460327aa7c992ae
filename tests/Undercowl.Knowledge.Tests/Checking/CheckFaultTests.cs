using Undercowl.Knowledge.Tests.Fixtures;

namespace Undercowl.Knowledge.Tests.Checking;

/// <summary>Derived: each row breaks one line of valid knowledge, and exactly that line is told.</summary>
public sealed class CheckFaultTests
{
    private const string Seen = "checks/spark-seen.yaml", Gap = "checks/gap-test.yaml", Ohms = "checks/coil-resistance.yaml", Proof = "checks/tester-proof.yaml", Runs = "checks/runs.yaml";

    [Theory]
    [InlineData(Seen, "at: cyl", "at: cylinder", "at:", "no place engine or cyl and no part kind cylinder", "use one of: coil, plug, ring")]
    [InlineData(Seen, "revision: 1", "revision: 0", "revision", "revision is 0", "1 or more")]
    [InlineData(Seen, "minutes: 3", "minutes: -3", "minutes", "minutes is -3", "0 or more")]
    [InlineData(Seen, "minutes: 3", "minutes: 3\nagain: 2", "again", "nothing shares the preparation", "name a cluster")]
    [InlineData(Seen, "minutes: 3", "minutes: 3\ncluster: tester\nagain: 4", "again", "it would take longer", "no more than all")]
    [InlineData(Seen, "tools: [gap-tester]", "tools: [gaptester]", "tools", "no tool gaptester", "did you mean gap-tester?")]
    [InlineData(Seen, "[keep-clear]", "[keep-clean]", "cautions", "no caution keep-clean", "did you mean keep-clear?")]
    [InlineData(Seen, "handles: [plug]", "handles: [plugs]", "handles", "no part kind plugs", "did you mean plug?")]
    [InlineData(Seen, "plug-state@here: tester", "plug-state: tester", "set-up", "plug-state is of one cylinder", "plug-state@here: tester")]
    [InlineData(Seen, "stop-wire: \"on\"", "stop-wire@here: \"on\"", "set-up", "stop-wire is of the whole engine", "stop-wire: on")]
    [InlineData(Seen, "stop-wire: \"on\"", "stop-wire: pulled", "set-up", "no value of stop-wire, pulled", "use one of: helped, off, on")]
    [InlineData(Seen, "stop-wire: \"on\"", "stopwire: \"on\"", "set-up", "no set-up key stopwire", "did you mean stop-wire?")]
    [InlineData(Seen, "some: thin", "some: thinn", "count", "no choice thinn", "did you mean thin?")]
    [InlineData(Ohms, "swap: coil", "swap: ring", "swap", "ring is not swappable", "swappable: true")]
    [InlineData(Ohms, "  low: 0\n", "  low: 2000\n", "low: 2000", "low is 2000 and high is 1000", "smaller one")]
    [InlineData(Ohms, "likelihood:", "choices: [{id: a, name: a}, {id: b, name: b}]\nlikelihood:", "id: coil-resistance", "a choice or a number", "either choices or number")]
    [InlineData(Proof, "  - {id: dark, name: dark}\n", "", "choices:", "one choice tells nothing", "two or more", 3)]
    [InlineData(Gap, "value: 8, unit: mm", "value: 8, unit: in", "value: 8", "the default is in in, the setting in mm", "both in mm")]
    [InlineData(Gap, "source: invented}", "source: invented, only: {strokes: four}}", "value: 8", "no layout whose strokes is four", "use one of: two", 2)]
    [InlineData(Gap, "id: tester-gap", "id: heat", "id: heat", "heat is a set-up key too", "another id", 2)]
    [InlineData(Seen, "none: {blue: 0.02, thin: 0.03, none: 0.95}", "none: {blue: 0.02, thin: 0.03, none: 0.95}\ncaps:\n  - {decibans: 3, readings: [blue, thin], source: invented}", "decibans: 3", "thin can weigh", "raise the chance of thin at strong", 2)]
    [InlineData(Seen, "none: {blue: 0.02, thin: 0.03, none: 0.95}", "none: {blue: 0.02, thin: 0.03, none: 0.95}\ncaps:\n  - {decibans: 30, readings: [blue], source: invented}", "decibans: 30", "of one choice there is nothing to tell apart", "two or more")]
    [InlineData(Seen, "none: {blue: 0.02, thin: 0.03, none: 0.95}", "none: {blue: 0.02, thin: 0.03, none: 0.95}\ncaps:\n  - {decibans: 30, readings: [blue, thinn], source: invented}", "decibans: 30", "no choice thinn", "did you mean thin?")]
    public void A_malformed_check_is_told(string file, string old, string changed, string line, string message, string mend, int problems = 1) =>
        SmallKnowledge.Break(file, old, changed, line, message, mend, problems);

    [Theory]
    [InlineData(Seen, "  quantity: kv\n", "  quantity: kv\n  aspect: coil.winding\n", "likelihood:", "a check reads one thing", "exactly one of")]
    [InlineData(Seen, "  quantity: kv\n", "", "likelihood:", "a check reads one thing", "exactly one of")]
    [InlineData(Seen, "  quantity: kv\n", "  quantity: kilovolts\n", "quantity", "no quantity kilovolts", "use one of")]
    [InlineData(Seen, "{blue: 0.90, thin: 0.08, none: 0.02}", "{blue: 0.91, thin: 0.08, none: 0.02}", "strong:", "the row of strong adds up to 1.01", "make it 1")]
    [InlineData(Seen, "{blue: 0.90, thin: 0.08, none: 0.02}", "{blue: 0.90, thick: 0.08, none: 0.02}", "thick", "no choice thick", "use one of: blue, none, thin", 2)]
    [InlineData(Seen, "{blue: 0.90, thin: 0.08, none: 0.02}", "{blue: 0.92, thin: 0.08}", "strong:", "none is as good as impossible at strong", "0.002 or more")]
    [InlineData(Seen, "none: {blue: 0.02, thin: 0.03, none: 0.95}", "none: {blue: 0.001, thin: 0.049, none: 0.95}", "blue: 0.001", "blue is as good as impossible at none", "people err", 2)]
    [InlineData(Seen, "    strong: {", "    strog: {", "strog", "no level or condition strog", "did you mean strong?", 2)]
    [InlineData(Seen, "    weak: {blue: 0.30, thin: 0.50, none: 0.20}\n", "", "given", "no row for weak", "add weak")]
    [InlineData(Proof, "tool: gap-tester.clip", "tool: gap-tester.jaw", "tool:", "no aspect of gap-tester, jaw", "use one of: clip")]
    [InlineData(Proof, "tool: gap-tester.clip", "tool: clip", "tool:", "clip names no aspect", "clip.")]
    [InlineData(Proof, "    sound: {sparks: 0.97, dark: 0.03}\n", "", "given", "no row for sound", "add sound")]
    [InlineData(Ohms, "aspect: coil.winding", "aspect: coil.windings", "aspect", "no aspect of coil, windings", "did you mean winding?")]
    [InlineData(Ohms, "aspect: coil.winding", "aspect: coils.winding", "aspect", "no part kind coils", "did you mean coil?")]
    [InlineData(Ohms, "    rubbing: {median: 0.9, spread: 0.15, open: 0.05}\n", "", "densities", "no row for rubbing", "add rubbing")]
    [InlineData(Ohms, "median: 1, spread: 0.1", "median: 1, spread: 0", "spread: 0,", "spread is 0", "above 0")]
    [InlineData(Ohms, "median: 1, spread", "median: -1, spread", "median: -1", "median is -1", "0 or more")]
    [InlineData(Ohms, "  outlier: 0.02\n", "", "likelihood", "nothing to do with the case is missing", "add outlier")]
    [InlineData(Ohms, "  reference: coil-ohms\n", "", "likelihood", "the model density needs reference", "add reference")]
    [InlineData(Ohms, "reference: coil-ohms", "reference: coil-ohm", "reference", "no spec item coil-ohm", "did you mean coil-ohms?")]
    [InlineData(Ohms, "  generic-spread: 0.2\n", "", "likelihood", "generic-spread is missing", "add generic-spread")]
    [InlineData(Ohms, "correct: copper-to20", "correct: copper-to-20", "correct", "copper-to-20 is not a correction", "did you mean copper-to20?")]
    [InlineData(Gap, "gap: tester-gap", "gap: testergap", "gap: testergap", "no setting of this check, testergap", "did you mean tester-gap?")]
    [InlineData(Gap, "    unit: mm\n", "    unit: in\n", "gap: tester-gap", "the setting tester-gap is in in", "set in mm", 2)]
    [InlineData(Gap, "  quantity: kv", "  aspect: coil.winding", "likelihood", "a gap reads a voltage", "kV")]
    [InlineData(Gap, "  spread: 0.2\n", "", "likelihood", "the model gap needs spread", "add spread")]
    [InlineData(Gap, "spread: 0.2", "spread: 0", "spread", "spread is 0", "above 0")]
    [InlineData(Gap, "never: never,", "never: nevr,", "gap-choices", "no choice nevr", "did you mean never?", 2)]
    [InlineData(Gap, "  - {id: never, name: never}\n", "  - {id: never, name: never}\n  - {id: dim, name: dim}\n", "gap-choices", "the choice dim means neither", "three choices")]
    [InlineData(Gap, "outlier: 0.02", "outlier: 0.005", "outlier", "seen again and again", "of 0.0101 or more")]
    [InlineData(Gap, "model: gap", "model: gap\n  reference: coil-ohms", "reference", "the model gap does not use reference", "take it out")]
    [InlineData(Runs, "quantity: firing", "quantity: kv", "quantity", "kv is of one cylinder, but the check is of the engine", "at: cyl", 6)]
    [InlineData(Seen, "fresh: 0.01", "fresh: 10", "fresh", "fresh is 10, which is not a probability", "from 0 to 1")]
    [InlineData(Seen, "model: table", "model: density", "model: density", "a density reads a number", "model: table", 8)]
    [InlineData(Gap, "quantity: kv", "quantity: gap", "quantity", "the levels of gap are not told in kV", "unit: kV")]
    [InlineData(Ohms, "spread: 0.1, open: 0.012}", "spread: 0.1, open: 12}", "open: 12", "open is 12, which is not a probability", "from 0 to 1")]
    public void A_malformed_likelihood_is_told(string file, string old, string changed, string line, string message, string mend, int problems = 1) =>
        SmallKnowledge.Break(file, old, changed, line, message, mend, problems);

    [Fact]
    public void A_chance_of_over_range_where_a_number_cannot_be_is_told_in_each_row()
    {
        using var small = new SmallKnowledge();
        small.Change(Ohms, "  open: true\n", "");
        var problems = small.Compile().Problems;
        Assert.Equal(["sound:", "open:", "open-hot:", "rubbing:"], problems.Select(p => small.Read(Ohms).Split('\n')[p.Line - 1].Trim().Split(' ')[0]));
        Assert.All(problems, p => Assert.Equal("the number cannot be over range here", p.Message));
    }

    // Derived: blue is likeliest at strong (0.90) and least likely at none (0.02). With fresh 0.05 and three choices one look
    // has 0.95 * 0.90 + 0.05/3 = 0.87167 against 0.95 * 0.02 + 0.05/3 = 0.03567: a ratio of 24.44. Endless looks have 45.
    // 10 log10(45 / 24.44) = 2.65 dB: kept. With fresh 0.06 it is 0.866 against 0.0388: 22.32, and 3.05 dB: broken.
    // The reading none at strong (0.02) against none (0.95) does the same: 0.06 gives 3.06 dB.
    [Fact]
    public void Repeats_may_weigh_no_more_than_three_decibels_above_one_look()
    {
        using var small = new SmallKnowledge();
        small.Change(Seen, "fresh: 0.01", "fresh: 0.05");
        Assert.Empty(small.Compile().Problems);
        small.Change(Seen, "fresh: 0.05", "fresh: 0.06");
        var problems = small.Compile().Problems;
        Assert.Equal(
            [
                "none seen again and again would weigh 3.1 dB more for none against strong than seen once",
                "blue seen again and again would weigh 3.0 dB more for strong against none than seen once",
            ],
            problems.Select(p => p.Message));
        Assert.All(problems, p => Assert.Contains("lower fresh to 0.058", p.Mend, StringComparison.Ordinal));
        Assert.Equal([small.LineOf(Seen, "strong:"), small.LineOf(Seen, "none: {blue")], problems.Select(p => p.Line));
    }
}
