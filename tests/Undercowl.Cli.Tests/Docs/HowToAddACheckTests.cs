using System.Text.Json;
using Undercowl.Cli.Tests.Fixtures;
using Undercowl.Knowledge;
using Undercowl.KnowledgeCompiler;
using Xunit;

namespace Undercowl.Cli.Tests.Docs;

/// <summary>
/// docs/how-to-add-a-check.md done as it says: its blocks are put into a copy of knowledge/, compiled, and worked with by the
/// program as it is. Nothing here knows the new part but by the page.
/// </summary>
public sealed class HowToAddACheckTests : IDisposable
{
    private const string Contact = "shift-interrupt@engine.contact";
    private const string Passage = "tank-vent@side:boat.passage";

    private readonly Terminal _terminal = new();

    public HowToAddACheckTests()
    {
        foreach (var file in Directory.EnumerateFiles(Repository.PathOf("knowledge"), "*.yaml", SearchOption.AllDirectories))
        {
            _terminal.Write(Path.Combine("knowledge", Path.GetRelativePath(Repository.PathOf("knowledge"), file)), File.ReadAllText(file));
        }
    }

    [Fact]
    public void The_blocks_of_the_page_are_good_knowledge_and_go_beside_what_is_there()
    {
        var before = _terminal.Run("knowledge", "check", "knowledge", "--json").Json().GetProperty("counts");
        var blocks = Add();
        Assert.Equal(
            ["parts/shift-interrupt.yaml", "checks/shift-interrupt-unplugged.yaml", "remedies/replace-shift-interrupt.yaml", "layouts/how-to-add-a-check.yaml", "parts/tank-vent.yaml", "checks/tank-vent-open.yaml", "common-causes/flooded-cowl.yaml", "intake/wet-under-cowl.yaml"],
            blocks.Select(b => b.Path));
        var after = _terminal.Run("knowledge", "check", "knowledge", "--json").Json();
        Assert.True(after.GetProperty("good").GetBoolean());
        foreach (var (kind, added) in (ReadOnlySpan<(string, int)>)[("parts", 1), ("checks", 1), ("remedies", 1), ("layouts", 1), ("common-causes", 1), ("intake", 1), ("quantities", 0)])
        {
            Assert.Equal(before.GetProperty(kind).GetInt32() + added, after.GetProperty("counts").GetProperty(kind).GetInt32());
        }
    }

    [Fact]
    public void The_blocks_that_replace_a_file_keep_all_that_the_file_says_but_the_revision()
    {
        var replacing = Blocks().Where(b => File.Exists(Repository.PathOf($"knowledge/{b.Path}"))).ToArray();
        Assert.Equal(2, replacing.Length);
        foreach (var (path, text) in replacing)
        {
            var was = Repository.Read($"knowledge/{path}").TrimEnd('\n').Split('\n').Where(l => !l.StartsWith("revision:", StringComparison.Ordinal)).ToArray();
            Assert.Equal(was, text.Split('\n').Where(was.Contains));
        }
    }

    [Fact]
    public void The_new_part_its_check_and_its_remedy_work_without_code()
    {
        Add();
        Compile();
        _terminal.WithJob("visit.jsonl", "how-to-add-a-check");
        _terminal.Run("record", "visit.jsonl", "fuel-smell", "none").Good();
        var step = Assert.Single(Proposals(), p => p.GetProperty("id").GetString() == "shift-interrupt-unplugged");
        Assert.Equal("Is the switch open with the lever in neutral?", step.GetProperty("ask").GetString());
        Assert.Equal(["open", "now-and-then", "closed"], step.GetProperty("answers").EnumerateArray().Select(a => a.GetString()!));
        Assert.Contains("battery-negative-off", step.GetProperty("cautions").EnumerateArray().Select(c => c.GetProperty("id").GetString()!));

        // Nothing said of it yet: the complaint alone has raised it above its prior.
        var (heard, prior) = (Found($"{Contact}=stuck"), Cause($"{Contact}=stuck").GetProperty("prior").GetDouble());
        Assert.Equal(0.003, prior, 1e-9);
        Assert.True(heard > prior);

        _terminal.Run("record", "visit.jsonl", "shift-interrupt-unplugged", "closed").Good();
        Assert.InRange(Found($"{Contact}=stuck"), 0.5, 1);
        Assert.Contains(Proposals(), p => p.GetProperty("id").GetString() == "replace-shift-interrupt");
        _terminal.Run("remedy", "visit.jsonl", "replace-shift-interrupt").Good();
        Assert.InRange(Cause($"{Contact}=stuck").GetProperty("now").GetDouble(), 0, 0.02);
        Assert.InRange(Found($"{Contact}=stuck"), 0.5, 1);
    }

    [Fact]
    public void The_new_question_is_asked_and_its_answer_speaks_for_the_new_part()
    {
        Add();
        Compile();
        _terminal.WithJob("visit.jsonl", "how-to-add-a-check");
        var (before, open) = (Found($"{Contact}=stuck"), Found($"{Passage}=shut"));
        _terminal.Run("intake", "visit.jsonl", "wet-under-cowl", "wet").Good();
        Assert.True(Found($"{Contact}=stuck") > before * 1.5);
        Assert.True(Found($"{Passage}=shut") < open);
    }

    [Fact]
    public void The_new_condition_is_believed_by_its_own_row_and_mended_by_the_remedy_that_was_there()
    {
        Add();
        Compile();
        _terminal.WithJob("visit.jsonl", "how-to-add-a-check");
        var (shut, restricted) = (Found($"{Passage}=shut"), Found($"{Passage}=restricted"));
        _terminal.Run("record", "visit.jsonl", "tank-vent-open", "shut").Good();
        Assert.Contains("\"check\":\"tank-vent-open\"", _terminal.Read("visit.jsonl"), StringComparison.Ordinal);
        Assert.Contains("\"revision\":2", _terminal.Read("visit.jsonl"), StringComparison.Ordinal);

        // derived: one look, so the ratio of the two goes up by that of the rows' entries, (0.9 and 0.55, the hand's doubt
        // of 0.005 and the fresh error of 0.02 spread over two choices).
        var ratio = Found($"{Passage}=shut") / Found($"{Passage}=restricted") / (shut / restricted);
        Assert.Equal(Look(0.9) / Look(0.55), ratio, 1e-6);
        _terminal.Run("remedy", "visit.jsonl", "open-vent").Good();
        Assert.Equal(0.08 * Found($"{Passage}=restricted"), Cause($"{Passage}=restricted").GetProperty("now").GetDouble(), 1e-9);

        static double Look(double entry)
        {
            var lasting = 0.995 * entry + 0.005 / 2;
            return 0.99 * lasting + 0.01 * (1 - lasting);
        }
    }

    [Fact]
    public void A_row_or_a_source_left_out_is_named_by_file_line_and_mend_as_the_page_promises()
    {
        Add();
        Change("checks/tank-vent-open.yaml", "    restricted: {open: 0.45, shut: 0.55}\n", "");
        Change("parts/shift-interrupt.yaml", ", prior: 0.003, source: est-ignition", ", prior: 0.003");
        var ran = _terminal.Run("knowledge", "check", "knowledge");
        Assert.Equal(1, ran.Code);
        var said = ran.Out + ran.Error;
        Assert.Matches("""checks/tank-vent-open\.yaml:\d+: .*restricted.*; """, said);
        Assert.Matches("""parts/shift-interrupt\.yaml:9: .*source.*; """, said);
    }

    public void Dispose() => _terminal.Dispose();

    private static (string Path, string Text)[] Blocks() => [.. Repository.Read("docs/how-to-add-a-check.md").Split("```yaml\n").Skip(1)
        .Select(rest => rest[..rest.IndexOf("```", StringComparison.Ordinal)])
        .Select(block => (block[..block.IndexOf('\n', StringComparison.Ordinal)].TrimStart('#', ' '), block[(block.IndexOf('\n', StringComparison.Ordinal) + 1)..]))];

    private (string Path, string Text)[] Add()
    {
        var blocks = Blocks();
        foreach (var (path, text) in blocks)
        {
            _terminal.Write($"knowledge/{path}", text);
        }

        return blocks;
    }

    private void Change(string file, string from, string to)
    {
        var text = _terminal.Read($"knowledge/{file}");
        Assert.Contains(from, text, StringComparison.Ordinal);
        _terminal.Write($"knowledge/{file}", text.Replace(from, to, StringComparison.Ordinal));
    }

    private void Compile()
    {
        var result = KnowledgeFolder.Compile(_terminal.PathOf("knowledge"));
        Assert.Empty(result.Problems);
        File.WriteAllBytes(_terminal.PathOf("knowledge.json"), KnowledgeJson.Write(result.Knowledge!));
        _terminal.Environment["UNDERCOWL_KNOWLEDGE"] = _terminal.PathOf("knowledge.json");
    }

    private JsonElement[] Proposals() => [.. _terminal.Run("next", "visit.jsonl", "--top", "99", "--json").Json().GetProperty("proposals").EnumerateArray()];

    private JsonElement Cause(string id) =>
        _terminal.Run("belief", "visit.jsonl", "--json").Json().GetProperty("causes").EnumerateArray().Single(c => c.GetProperty("cause").GetString() == id);

    private double Found(string id) => Cause(id).GetProperty("asFound").GetDouble();
}
