using Undercowl.Knowledge.Tests.Fixtures;

namespace Undercowl.Knowledge.Tests.Checking;

/// <summary>Common causes and the questions that tell of them. Derived: each row breaks one line of valid knowledge.</summary>
public sealed class CommonCauseFaultTests
{
    private const string Damp = "common-causes/damp.yaml", Stood = "intake/stood.yaml";

    [Theory]
    [InlineData("prior: 0.2", "prior: 1", "prior", "prior is 1, which leaves no doubt", "between 0 and 1")]
    [InlineData("prior: 0.2\nsource: invented", "prior: 0.2\nsource: inventd", "source: inventd", "no source inventd", "did you mean invented?")]
    [InlineData("aspect: plug.wear", "aspect: plug.weer", "aspect: plug.weer", "no aspect of plug, weer", "did you mean wear?")]
    [InlineData("aspect: plug.wear", "aspect: plug", "aspect: plug,", "plug names no aspect", "write plug. and the aspect")]
    [InlineData("conditions: worn", "conditions: sound", "conditions: sound", "no condition of plug.wear, sound", "use one of: worn")]
    [InlineData("times: 2", "times: 0", "times: 0", "times is 0", "above 0")]
    [InlineData("aspect: coil.winding, conditions: open", "aspect: plug.wear, conditions: worn", "likelier", "plug.wear=worn is named twice", "once")]
    public void A_malformed_common_cause_is_told(string old, string changed, string line, string message, string mend) =>
        SmallKnowledge.Break(Damp, old, changed, line, message, mend);

    [Fact]
    public void Where_all_common_causes_hold_something_must_be_left_for_sound()
    {
        using var small = new SmallKnowledge();
        small.Change(Damp, "times: 2", "times: 9");
        Assert.Empty(small.Compile().Problems);
        small.Change("parts/plug.yaml", "prior: 0.2", "prior: 0.3");

        // derived: worn 0.3 / (1 + 0.2 * 8) * 9 = 1.0385; with the prior of 0.2 it is 0.692.
        var problem = Assert.Single(small.Compile().Problems);
        Assert.Equal("where all common causes befell the engine the faults of wear add up to 1.038", problem.Message);
        Assert.EndsWith("plug.yaml", problem.File, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("wet: 0.1}", "wet: 0.2}", "usually", "the row of usually adds up to 1.1", "make it 1")]
    [InlineData("usually: {dry: 0.9, wet: 0.1}", "usually: {dry: 1}", "usually", "wet is as good as impossible at usually", "people err")]
    [InlineData("usually: {dry: 0.9, wet: 0.1}\n", "", "id: stood", "usually, its source and tells belong together", "all three, or none")]
    [InlineData("common-cause: damp", "common-cause: dump", "common-cause", "no common cause dump", "did you mean damp?")]
    [InlineData("quantity: stopped", "quantity: spark", "quantity", "spark is of one cylinder", "a quantity of the engine", 2)]
    [InlineData("quantity: stopped", "quantity: stopped\n    common-cause: damp", "quantity", "one thing at a time", "exactly one")]
    [InlineData("\"yes\": {dry: 0.8", "\"no\": {dry: 0.8", "\"no\"", "no level of stopped but its best, no", "use one of")]
    [InlineData("\"yes\": {dry: 0.2", "\"no\": {dry: 0.2", "\"no\"", "no level no", "use one of: yes")]
    public void A_question_that_tells_nothing_that_there_is_is_told(string old, string changed, string line, string message, string mend, int problems = 1) =>
        SmallKnowledge.Break(Stood, old, changed, line, message, mend, problems);
}
