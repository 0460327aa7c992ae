using Undercowl.Knowledge.Tests.Fixtures;

namespace Undercowl.Knowledge.Tests.Checking;

/// <summary>Derived: each row breaks one line of valid knowledge, and exactly that line is told.</summary>
public sealed class PartFaultTests
{
    [Theory]
    [InlineData("parts/ring.yaml", "prior: 0.07", "prior: 1.07", "conditions:", "add up to 1.07", "lower them", 2)]
    [InlineData("parts/ring.yaml", "prior: 0.07", "prior: -0.07", "prior", "prior is -0.07, which is not a probability", "from 0 to 1")]
    [InlineData("parts/ring.yaml", "prior: 0.07", "prior: 1", "conditions:", "the faults of face add up to 1 ", "lower them")]
    [InlineData("parts/ring.yaml", "source: invented", "source: invnted", "source", "no source invnted", "did you mean invented?")]
    [InlineData("parts/ring.yaml", "{oil: \"yes\"}", "{oill: \"yes\"}", "effects", "no quantity oill", "did you mean oil?")]
    [InlineData("parts/ring.yaml", "{oil: \"yes\"}", "{oil: lots}", "effects", "no level of oil, lots", "use one of: no, yes")]
    [InlineData("parts/ring.yaml", "{oil: \"yes\"}", "{oil: \"no\"}", "effects", "no is the best level of oil", "use one of: yes")]
    [InlineData("parts/ring.yaml", "{oil: \"yes\"}", "{fires: dead}", "effects", "fires follows from its inputs alone", "worst-of or any")]
    [InlineData("parts/ring.yaml", "      - id: worn", "      - id: sound", "id: sound", "sound is there without being listed", "faults only")]
    [InlineData("parts/coil.yaml", "when: {heat: hot}", "when: {heat: warm}", "when", "no value of heat, warm", "use one of: cold, hot")]
    [InlineData("parts/coil.yaml", "when: {heat: hot}", "when: {heet: hot}", "when", "no set-up key heet", "did you mean heat?")]
    [InlineData("parts/coil.yaml", "shows: 0.4", "shows: 4", "shows", "shows is 4, which is not a probability", "from 0 to 1")]
    [InlineData("parts/coil.yaml", "prior: 0.06", "prior: 0.96", "conditions:", "the faults of winding add up to 1.01", "lower them")]
    [InlineData("parts/plug.yaml", "oily: 0.6", "oily: 1", "\"yes\":", "the faults of deposit at yes add up to 1 in the layout two", "lower them")]
    [InlineData("parts/plug.yaml", "oily: 0.6", "oilly: 0.6", "\"yes\":", "no condition of deposit, oilly", "did you mean oily?")]
    [InlineData("parts/plug.yaml", "        \"no\": {}\n", "", "rows", "no row for the level no of oil", "add no:")]
    [InlineData("parts/plug.yaml", "\"no\": {}", "\"none\": {}", "\"none\":", "no level of oil, none", "use one of: no, yes", 2)]
    [InlineData("parts/plug.yaml", "quantity: oil", "quantity: oily", "quantity", "no quantity oily", "did you mean oil?")]
    [InlineData("parts/plug.yaml", "set-up: {heat: cold}", "set-up: {heat: frozen}", "set-up", "no value of heat, frozen", "use one of: cold, hot")]
    [InlineData("parts/plug.yaml", "  - id: deposit", "  - id: wear # again", "# again", "two of the aspect wear", "another id", 2)]
    public void A_malformed_part_kind_is_told(string file, string old, string changed, string line, string message, string mend, int problems = 1) =>
        SmallKnowledge.Break(file, old, changed, line, message, mend, problems);
}
