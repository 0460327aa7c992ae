using Undercowl.Knowledge.Tests.Fixtures;

namespace Undercowl.Knowledge.Tests.Checking;

/// <summary>Remedies, complaints, safety, sources, specs and aliases. Derived: each row breaks one line of valid knowledge.</summary>
public sealed class OtherFaultTests
{
    private const string Clean = "remedies/clean-plug.yaml", Coil = "remedies/new-coil.yaml", Complaint = "complaints/no-start.yaml", Rule = "interlocks/fuel-vapour.yaml";

    [Theory]
    [InlineData(Clean, "part: plug", "part: plugg", "part", "no part kind plugg", "did you mean plug?")]
    [InlineData(Clean, "aspect: deposit", "aspect: deposits", "deposits", "no aspect of plug, deposits", "did you mean deposit?")]
    [InlineData(Clean, "conditions: [worn]", "conditions: [warn]", "conditions", "no condition of plug.wear, warn", "did you mean worn?")]
    [InlineData(Clean, "not-cured: 0.05", "not-cured: 5", "not-cured: 5", "not-cured is 5, which is not a probability", "from 0 to 1")]
    [InlineData(Clean, "{aspect: deposit", "{part: coill, aspect: deposit", "part: coill", "no part kind coill", "did you mean coil?")]
    [InlineData(Clean, "{aspect: deposit", "{part: coil, aspect: deposit", "aspect: deposit", "no aspect of coil, deposit", "use")]
    [InlineData(Clean, "minutes: 8", "meets: [airclear]\nminutes: 8", "meets", "no condition of lifting an interlock airclear", "did you mean air-clear?")]
    [InlineData(Clean, "minutes: 8", "replaces: true\nnew-part-bad: 0.1\nminutes: 8", "id: clean-plug", "all aspects fresh", "and not both")]
    [InlineData(Clean, "[keep-clear]", "[keepclear]", "cautions", "no caution keepclear", "did you mean keep-clear?")]
    [InlineData(Coil, "replaces: true\nnew-part-bad: 0.02\n", "", "id: new-coil", "new-coil changes nothing", "replaces: true, or cures")]
    [InlineData(Coil, "new-part-bad: 0.02\n", "", "id: new-coil", "without the chance that the new part is bad", "add new-part-bad")]
    [InlineData(Coil, "new-part-bad: 0.02", "new-part-bad: 2", "new-part-bad", "new-part-bad is 2, which is not a probability", "from 0 to 1")]
    [InlineData(Coil, "source: invented", "source: inventd", "source", "no source inventd", "did you mean invented?")]
    [InlineData(Coil, "parts: 60", "parts: -60", "parts", "parts is -60", "0 or more")]
    public void A_malformed_remedy_is_told(string file, string old, string changed, string line, string message, string mend, int problems = 1) =>
        SmallKnowledge.Break(file, old, changed, line, message, mend, problems);

    [Theory]
    [InlineData("quantity: firing\n", "quantity: firings\n", "quantity", "no quantity firings", "did you mean firing?", 2)]
    [InlineData("  one-dead: 0.4\n", "", "given", "no chance for the level one-dead of firing", "add one-dead")]
    [InlineData("one-dead: 0.4", "one-ded: 0.4", "one-ded", "no level of firing, one-ded", "did you mean one-dead?", 2)]
    [InlineData("all: 0.01", "all: 0", "all: 0", "would prove that firing is not all", "small number")]
    [InlineData("all: 0.01", "all: 1.01", "all: 1.01", "all is 1.01, which is not a probability", "from 0 to 1")]
    [InlineData("healthy: [all]", "healthy: [al]", "healthy", "no level of firing, al", "did you mean all?")]
    [InlineData("healthy: [all]", "healthy: []", "healthy", "no level is healthy", "levels of firing")]
    [InlineData("system-test: runs", "system-test: run", "system-test", "no check run", "did you mean runs?")]
    [InlineData("good: [well]", "good: [good]", "good", "no choice of runs, good", "use one of: not, rough, well")]
    [InlineData("good: [well]", "good: []", "good", "no choice is good", "good choices of runs")]
    [InlineData("set-up: {heat: cold}", "set-up: {heat: icy}", "set-up", "no value of heat, icy", "use one of: cold, hot")]
    [InlineData("proofs: [hot-start]", "proofs: [hot-stat]", "proofs", "no proof hot-stat", "did you mean hot-start?")]
    [InlineData("quantity: firing, given: {all: 0.9,", "quantity: firing, given: {", "more-dead: 0.2", "no chance for the level all of firing", "add all")]
    [InlineData("{set-up: {heat: hot}, quantity", "{set-up: {heat: icy}, quantity", "more-dead: 0.2", "no value of heat, icy", "use one of: cold, hot")]
    [InlineData("quantity: firing, given: {all: 0.9", "quantity: firings, given: {all: 0.9", "more-dead: 0.2", "no quantity firings", "did you mean firing?")]
    public void A_malformed_complaint_is_told(string old, string changed, string line, string message, string mend, int problems = 1) =>
        SmallKnowledge.Break(Complaint, old, changed, line, message, mend, problems);

    [Theory]
    [InlineData("checks: [runs]", "checks: [rums]", "checks", "no check rums", "did you mean runs?")]
    [InlineData("checks: [runs]", "checks: []", "id: hot-start", "hot-start could never be shown", "good choices")]
    [InlineData("good: [well]", "good: [good]", "good", "no choice of runs is good", "one of: well, rough, not")]
    [InlineData("set-up: {heat: hot}", "set-up: {heat: icy}", "set-up", "no value of heat, icy", "use one of: cold, hot")]
    [InlineData("source: invented", "after: fuelwork\nsource: invented", "after", "no remedy that does, or check with the danger fuelwork", "did you mean fuel-work?")]
    [InlineData("source: invented", "occasions: 0\nsource: invented", "occasions", "occasions is 0", "1 or more")]
    public void A_malformed_proof_is_told(string old, string changed, string line, string message, string mend) =>
        SmallKnowledge.Break("proofs/hot-start.yaml", old, changed, line, message, mend);

    [Theory]
    [InlineData("[high-voltage, running]", "[high-voltage, runing]", "withholds", "no check, set-up or remedy with the hazard runing", "did you mean running?")]
    [InlineData("instead:", "smelt: {states: airclear, places: [cowl]}\ninstead:", "smelt", "no statement of lift airclear", "did you mean air-clear?")]
    [InlineData("instead:", "smelt: {states: air-clear, places: [cowl, cowl]}\ninstead:", "smelt", "there are two of the place cowl", "another id")]
    [InlineData("answer: clear", "answer: cleer", "answer: cleer", "no answer to smell, cleer", "did you mean clear?")]
    [InlineData("{question: smell,", "{question: smells,", "question: smells", "no intake question smells", "did you mean smell?")]
    [InlineData("does: fuel-work", "does: fuelwork", "does", "no remedy that does fuelwork", "did you mean fuel-work?")]
    [InlineData("check: runs", "check: rums", "check", "no check rums", "did you mean runs?")]
    [InlineData("choice: [rough, not]", "choice: [rugh, not]", "choice", "no choice of runs, rugh", "did you mean rough?")]
    [InlineData("{does: fuel-work}", "{does: fuel-work, question: smell}", "does", "a check, a deed or a question", "exactly one")]
    [InlineData("{does: fuel-work}", "{does: fuel-work, choice: rough}", "does", "a choice belongs to a check", "take it out")]
    [InlineData("source: invented", "source: inventive", "source", "no source inventive", "use one of: invented")]
    public void A_malformed_interlock_is_told(string old, string changed, string line, string message, string mend) =>
        SmallKnowledge.Break(Rule, old, changed, line, message, mend);

    [Theory]
    [InlineData("lift:\n  - {id: air-clear, name: the air is clear}\n", "cleared-by:\n  - {question: smell, answer: clear}\n", "nothing ever clears fuel-vapour", "once closed, fuel-vapour stays so")]
    [InlineData("until-known: true\n", "opened-by:\n  - question: smell\n    answer: smells\n  - {does: fuel-work}\n  - check: runs\n    choice: [rough, not]\n", "nothing ever closes fuel-vapour")]
    public void An_interlock_that_can_never_change_is_told(string first, string second, params string[] messages)
    {
        using var small = new SmallKnowledge();
        small.Change(Rule, first, "");
        Assert.Empty(small.Compile().Problems);
        small.Change(Rule, second, "");
        Assert.Equal(messages, small.Compile().Problems.Select(p => p.Message));
    }

    [Theory]
    [InlineData("sources.yaml", "- id: invented\n", "- id: invented\n  kind: estimate\n  cite: twice\n- id: invented # again\n", "# again", "two of the source invented", "another id")]
    [InlineData("specs.yaml", "  low: 80\n  high: 120\n", "", "item", "coil-ohms has no bound", "low, high or both")]
    [InlineData("specs.yaml", "low: 80", "low: 180", "low", "low is 180 and high is 120", "smaller one")]
    [InlineData("costs.yaml", "source: invented", "source: invent", "source", "no source invent", "did you mean invented?")]
    [InlineData("results.yaml", "value: 0.5", "value: 1.5", "value: 1.5", "value is 1.5, which is not a probability", "from 0 to 1")]
    [InlineData("cautions/no-stop.yaml", "source: invented", "source: nowhere", "source", "no source nowhere", "use one of: invented")]
    [InlineData("aliases.yaml", "kilovolts: kv", "kilovolts: kvs", "kilovolts", "no id kvs", "did you mean kv?")]
    [InlineData("aliases.yaml", "kilovolts: kv", "runs: kv", "runs", "runs is renamed, but is still in use", "never reused")]
    public void Sources_specs_costs_and_aliases_that_are_wrong_are_told(string file, string old, string changed, string line, string message, string mend) =>
        SmallKnowledge.Break(file, old, changed, line, message, mend);

    [Fact]
    public void A_caution_that_names_a_hazard_wants_it_among_the_hazards_of_whatever_shows_it()
    {
        using var small = new SmallKnowledge();
        small.Change("cautions/keep-clear.yaml", "id: keep-clear", "id: keep-clear\nhazard: flywheel");
        var problem = Assert.Single(small.Compile().Problems, p => p.File.EndsWith("clean-plug.yaml", StringComparison.Ordinal));
        Assert.Contains("keep-clear warns of flywheel, which is not among the hazards", problem.Message, StringComparison.Ordinal);
        Assert.Contains("add flywheel to hazards", problem.Mend, StringComparison.Ordinal);
        small.Change(Clean, "minutes: 8", "hazards: [flywheel]\nminutes: 8");
        Assert.DoesNotContain(small.Compile().Problems, p => p.Message.Contains("keep-clear warns", StringComparison.Ordinal) && p.File.EndsWith("clean-plug.yaml", StringComparison.Ordinal));
    }
}
