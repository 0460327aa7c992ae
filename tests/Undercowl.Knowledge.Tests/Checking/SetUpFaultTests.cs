using Undercowl.Knowledge.Tests.Fixtures;

namespace Undercowl.Knowledge.Tests.Checking;

/// <summary>Derived: each row breaks one line of valid knowledge, and exactly that line is told.</summary>
public sealed class SetUpFaultTests
{
    [Theory]
    [InlineData("set-ups/heat.yaml", "default: cold", "default: warm", "default", "no value warm", "use one of: cold, hot")]
    [InlineData("set-ups/stop-wire.yaml", "{kv: stopped}", "{kv: stoped}", "cuts", "no input of kv, stoped", "did you mean stopped?")]
    [InlineData("set-ups/stop-wire.yaml", "[runaway]", "[run-away]", "hazards", "no interlock or check that names the hazard run-away", "did you mean runaway?")]
    [InlineData("set-ups/stop-wire.yaml", "[no-stop]", "[no-stp]", "cautions", "no caution no-stp", "did you mean no-stop?")]
    [InlineData("set-ups/stop-wire.yaml", "{stopped: 1}", "{stopped: 2}", "lifts", "stopped cannot be lifted by 2", "from 1 to 1")]
    [InlineData("set-ups/stop-wire.yaml", "    source: invented\n", "", "id: helped", "the numbers of helped have no source", "add source")]
    [InlineData("set-ups/plug-state.yaml", "without: [plug]", "without: [plugg]", "without", "no part kind plugg", "did you mean plug?")]
    [InlineData("set-ups/plug-state.yaml", "{shunt: clean}", "{shunt: clear}", "sets", "no level of shunt, clear", "did you mean clean?")]
    [InlineData("set-ups/plug-state.yaml", "{shunt: clean}", "{stopped: \"no\"}", "sets", "of one cylinder and cannot act on stopped", "per: engine")]
    [InlineData("set-ups/plug-state.yaml", "{oil: \"yes\"}", "{oil: full}", "impossible", "no level of oil, full", "use one of: no, yes")]
    [InlineData("set-ups/plug-state.yaml", "    not-good: 0.03\n", "", "id: spare", "known-good without the chance that it is not", "add not-good")]
    [InlineData("set-ups/plug-state.yaml", "    known-good: [plug]\n", "", "id: spare", "not-good without known-good", "take not-good out")]
    [InlineData("set-ups/plug-state.yaml", "not-good: 0.03", "not-good: 3", "not-good", "not-good is 3, which is not a probability", "from 0 to 1")]
    [InlineData("tools/gap-tester.yaml", "shape: blunt-points", "shape: blunt", "shape", "no electrode shape blunt", "blunt-points")]
    [InlineData("tools/gap-tester.yaml", "shape: blunt-points", "shape: blunt-points\nlead-ohms: 0.2\nsource: inventory", "inventory", "no source inventory", "invented")]
    [InlineData("tools/gap-tester.yaml", "prior: 0.02", "prior: 1", "conditions:", "the faults of clip add up to 1", "lower them")]
    [InlineData("hands.yaml", "doubt: 0.2", "doubt: 2", "doubt: 2", "doubt is 2, which is not a probability", "from 0 to 1")]
    [InlineData("hands.yaml", "[high-voltage]", "[hi-voltage]", "spared", "no check, set-up or interlock with the hazard hi-voltage", "did you mean high-voltage?")]
    [InlineData("hands.yaml", "- id: caller\n", "- id: technician # again\n", "# again", "two of the hand technician", "another id")]
    [InlineData("set-ups/stop-wire.yaml", "{kv: stopped}", "{kw: stopped}", "cuts", "no quantity kw", "did you mean kv?")]
    public void A_malformed_set_up_tool_or_hand_is_told(string file, string old, string changed, string line, string message, string mend, int problems = 1) =>
        SmallKnowledge.Break(file, old, changed, line, message, mend, problems);
}
