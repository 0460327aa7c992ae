using Undercowl.Cli.Commands;
using Undercowl.Cli.Tests.Fixtures;
using Xunit;

namespace Undercowl.Cli.Tests.Commands;

/// <summary>Every command of docs/terminal.md through the real program: a good use, a bad one, and its documents.</summary>
public sealed class CommandTests(Templates templates) : IClassFixture<Templates>
{
    public static TheoryData<string, string, string> Good => Cases.Good;

    public static TheoryData<string, int, string, string> Bad => Cases.Bad;

    [Theory]
    [MemberData(nameof(Good))]
    public void A_good_use_ends_with_0_says_what_it_did_and_prints_its_document(string line, string says, string documents)
    {
        using var terminal = templates.Fresh();
        Assert.Contains(says, terminal.Run(Cases.Words(line)).Good().Out, StringComparison.Ordinal);

        using var fresh = templates.Fresh();
        var json = fresh.Run([.. Cases.Words(line), "--json"]).Good().JsonLines();
        string[] names = documents.Split(' ');
        Assert.All(json, document => Assert.True(names.Any(name => Shapes.IsValid(name, document)), $"no {documents}: {document}"));
        // Each name was printed, and a command of one document prints one line.
        Assert.All(names, name => Assert.Contains(json, document => Shapes.IsValid(name, document)));
        Assert.True(names.Length > 1 || json.Length == 1);
    }

    [Theory]
    [MemberData(nameof(Bad))]
    public void A_bad_use_ends_with_its_exit_code_and_a_message_that_names_the_place_and_the_mend(string line, int code, string what, string mend)
    {
        using var terminal = templates.Fresh();
        var before = Jobs(terminal);
        var ran = terminal.Run(Cases.Words(line));
        Assert.Equal(code, ran.Code);
        Assert.Contains(what, ran.Error, StringComparison.Ordinal);
        Assert.Contains(mend, ran.Error, StringComparison.Ordinal);
        Assert.DoesNotContain("   at Undercowl", ran.Error, StringComparison.Ordinal);
        Assert.Equal(before, Jobs(terminal));

        // For programs the same stands in a document, the command's own or that of a refusal.
        string[] words = Cases.Words(line);
        var dashes = Array.IndexOf(words, "--");
        var told = terminal.Run(dashes < 0 ? [.. words, "--json"] : [.. words[..dashes], "--json", .. words[dashes..]]);
        Assert.Equal(code, told.Code);
        var document = Assert.Single(told.JsonLines());
        if (document.TryGetProperty("refused", out var message))
        {
            Assert.True(Shapes.IsValid("Refused", document), $"no Refused: {document}");
            Assert.Contains(what, message.GetString(), StringComparison.Ordinal);
            Assert.Equal(code, document.GetProperty("exit").GetInt32());
        }
        else
        {
            Assert.True(Shapes.OnPage()[words[0]].Any(name => Shapes.IsValid(name, document)), $"no document of {words[0]}: {document}");
        }

        Assert.Equal(before, Jobs(terminal));
    }

    [Fact]
    public void Every_command_has_a_good_and_a_bad_use_and_stands_on_the_page_with_its_documents()
    {
        string[] names = [.. AllCommands.Names.Order(StringComparer.Ordinal)];
        Assert.Equal(names, Good.Select(g => Cases.Words(g.Data.Item1)[0]).Distinct().Order(StringComparer.Ordinal));
        Assert.Equal(names, Bad.Select(b => Cases.Words(b.Data.Item1)[0]).Where(names.Contains).Distinct().Order(StringComparer.Ordinal));
        var onPage = Shapes.OnPage();
        Assert.Equal(names, onPage.Keys.Order(StringComparer.Ordinal));
        foreach (var command in Good.GroupBy(g => Cases.Words(g.Data.Item1)[0]))
        {
            // An empty `work` records nothing, so the documents of the uses may be fewer than those of the page.
            Assert.Empty(command.SelectMany(g => g.Data.Item3.Split(' ')).Except(onPage[command.Key]));
        }
    }

    [Fact]
    public void Help_shows_examples_first_and_every_option_of_the_page()
    {
        using var terminal = new Terminal();
        var overview = terminal.Run("--help").Good().Out;
        Assert.StartsWith("Examples", overview, StringComparison.Ordinal);
        Assert.All(AllCommands.Names, name => Assert.Contains($"\n  {name} ", overview, StringComparison.Ordinal));
        Assert.Contains("prevail", overview, StringComparison.Ordinal);
        foreach (var (command, usage) in Shapes.Usages())
        {
            var help = terminal.Run([.. command.Split(' '), "--help"]).Good().Out;
            Assert.StartsWith("Examples", help, StringComparison.Ordinal);
            Assert.All(usage.Split(' ', '[', ']').Where(w => w.StartsWith("--", StringComparison.Ordinal)), option => Assert.Contains($"  {option}", help, StringComparison.Ordinal));
        }
    }

    private static string[] Jobs(Terminal terminal) =>
        [.. Directory.EnumerateFiles(terminal.Folder, "*.jsonl").Where(f => new FileInfo(f).Length > 0).Order(StringComparer.Ordinal).Select(f => Path.GetFileName(f) + File.ReadAllText(f))];
}
