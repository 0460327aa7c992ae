using Undercowl.Cli.Tests.Working;
using Xunit;

namespace Undercowl.Cli.Tests.Commands;

/// <summary>The schema, the page and the program know the same members.</summary>
public sealed class ShapeTests(Templates templates) : IClassFixture<Templates>
{
    public static TheoryData<string> Documents => [.. Shapes.Names];

    [Theory]
    [MemberData(nameof(Documents))]
    public void The_page_tells_of_every_member_of_the_schema_and_of_no_other(string document) =>
        Assert.Equal(Shapes.SchemaMembers(document).Order(StringComparer.Ordinal), Shapes.ToldMembers(document).Order(StringComparer.Ordinal));

    [Fact]
    public void Every_member_of_the_schema_is_really_printed_by_some_command()
    {
        using var terminal = templates.Fresh();
        var found = new HashSet<string>();
        foreach (var (name, line) in (ReadOnlySpan<(string, string)>)
            [
                ("Layouts", "layouts"), ("Checks", "checks"), ("Remedies", "remedies"), ("Questions", "intake mixed.jsonl"), ("Tools", "tools mixed.jsonl"),
                ("Next", "next mixed.jsonl --top 40"), ("Next", "next visit.jsonl"), ("Belief", "belief mixed.jsonl"), ("Job", "answer mixed.jsonl"), ("Belief", "belief odds.jsonl"), ("Why", "why mixed.jsonl lanyard-switch@side:boat.clip=off"),
                ("Audit", "why mixed.jsonl lanyard-switch@side:boat.clip=off --audit --with parts/lanyard-switch/aspects/clip/conditions/off/prior=0.2"), ("Sensitivity", "sensitivity mixed.jsonl"),
                ("Network", "network mixed.jsonl --format uai"), ("Merged", "merge visit.jsonl copy.jsonl"), ("Safety", "ventilate visit.jsonl --clear cowl"),
                ("SignedOff", "sign-off mixed.jsonl --as referred --by technician"),
                ("Recorded", "record visit.jsonl spark-to-ground --at cyl:1 never"), ("Recorded", "record mixed.jsonl battery-rest-volts 12.4V"), ("Recorded", "record mixed.jsonl coil-secondary-ohms --at cyl:1 1.1kohm"), ("Job", "answer mixed.jsonl"), ("Refused", "belief nowhere.jsonl"), ("Report", "report mixed.jsonl"),
                ("Knowledge", "knowledge check bad-knowledge"), ("Knowledge", "knowledge check good-knowledge"),
            ])
        {
            var ran = terminal.Run([.. Cases.Words(line), "--json"]);
            Assert.True(ran.Code < 2, ran.Error);
            var document = Assert.Single(ran.JsonLines());
            Assert.True(Shapes.IsValid(name, document), $"no {name}: {document}");
            Shapes.EmittedPaths(name, document, found);
        }

        // Taking the swap back reads the findings after it otherwise.
        var swap = terminal.Run("report", "mixed.jsonl", "--json").Json().GetProperty("entries").EnumerateArray().Single(e => e.GetProperty("kind").GetString() == "swap").GetProperty("entry").GetString()!;
        Shapes.EmittedPaths("Withdrawn", terminal.Run("withdraw", "mixed.jsonl", swap, "--json").Json(), found);
        terminal.Run("withdraw", "mixed.jsonl", "last").Good();
        Shapes.EmittedPaths("Report", terminal.Run("report", "mixed.jsonl", "--json").Json(), found);

        // An open interlock says what it wants.
        terminal.Run("record", "other.jsonl", "fuel-smell", "strong").Good();
        Shapes.EmittedPaths("Safety", terminal.Run("ventilate", "other.jsonl", "--json").Json(), found);
        terminal.WithJob("worked.jsonl");
        foreach (var document in WorkedByHand.To(terminal, "worked.jsonl").Documents)
        {
            var name = document.GetProperty("event").GetString() switch { "step" => "Step", "recorded" => "RecordedStep", _ => "Ended" };
            Shapes.EmittedPaths(name, document, found);
        }

        // Said of an output only by a part that serves several cylinders and has one for each.
        terminal.WithJob("pairs.jsonl", "four-stroke-4-inductive", "misses");
        Shapes.EmittedPaths("Belief", terminal.Run("belief", "pairs.jsonl", "--json").Json(), found);
        Assert.Equal(Shapes.SchemaPaths().Order(StringComparer.Ordinal), found.Order(StringComparer.Ordinal));
    }
}
