using System.Text.Json.Nodes;
using Undercowl.Cli.Tests.Fixtures;
using Xunit;

namespace Undercowl.Cli.Tests.Files;

public sealed class DamagedJobTests
{
    [Fact]
    public void A_truncated_last_line_is_reported_by_who_reads_and_mended_by_who_writes_without_loss_of_the_rest()
    {
        using var terminal = new Terminal().WithJob();
        terminal.Run("note", "visit.jsonl", "kept").Good();
        var whole = terminal.Read("visit.jsonl");
        terminal.Run("note", "visit.jsonl", "torn").Good();
        var torn = terminal.Read("visit.jsonl")[whole.Length..^30];
        terminal.Write("visit.jsonl", whole + torn);

        var read = terminal.Run("report", "visit.jsonl").Good();
        Assert.Contains("visit.jsonl: the last line is unfinished and is left out.", read.Error, StringComparison.Ordinal);
        Assert.Contains("kept", read.Out, StringComparison.Ordinal);
        Assert.DoesNotContain("torn", read.Out, StringComparison.Ordinal);
        Assert.Equal(whole + torn, terminal.Read("visit.jsonl"));

        var written = terminal.Run("note", "visit.jsonl", "after").Good();
        Assert.Contains("visit.jsonl, line 3", written.Error, StringComparison.Ordinal);
        Assert.Contains($"its {torn.Length} bytes were never acknowledged", written.Error, StringComparison.Ordinal);
        Assert.Contains("moved to visit.jsonl.torn", written.Error, StringComparison.Ordinal);
        Assert.Equal(torn + "\n", terminal.Read("visit.jsonl.torn"));
        Assert.StartsWith(whole, terminal.Read("visit.jsonl"), StringComparison.Ordinal);
        var after = terminal.Run("report", "visit.jsonl").Good();
        Assert.Empty(after.Error);
        Assert.Contains("after", after.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void A_damaged_line_in_the_middle_is_refused_with_file_line_and_mend_and_the_file_is_not_touched()
    {
        using var terminal = new Terminal().WithJob();
        terminal.Run("note", "visit.jsonl", "first").Good();
        terminal.Run("note", "visit.jsonl", "second").Good();
        var damaged = terminal.Read("visit.jsonl").Replace("\"text\":\"first\"", "\"text\":first\"", StringComparison.Ordinal);
        terminal.Write("visit.jsonl", damaged);
        foreach (var command in (string[][])[["belief", "visit.jsonl"], ["note", "visit.jsonl", "more"], ["work", "visit.jsonl"]])
        {
            var refused = terminal.Run(command).Refused("visit.jsonl, line 2", "not JSON", "Restore the line");
            Assert.Empty(refused.Out);
        }

        Assert.Equal(damaged, terminal.Read("visit.jsonl"));
    }

    [Fact]
    public void A_job_that_is_not_there_is_told_with_a_near_name_or_how_to_begin_one()
    {
        using var terminal = new Terminal().WithJob();
        terminal.Run("belief", "vist.jsonl").Refused("There is no job vist.jsonl.", "Did you mean visit.jsonl?");
        terminal.Run("belief", "quite-another-name").Refused("undercowl start quite-another-name --layout");
        terminal.Run("belief", ".").Refused("There is no job");
        terminal.Write("empty.jsonl", "");
        terminal.Run("belief", "empty.jsonl").Refused("no opening entry", "Start a job first");
    }

    [Fact]
    public void Compiled_knowledge_that_is_missing_or_damaged_is_told_by_file_line_and_mend()
    {
        using var terminal = new Terminal().WithJob();
        terminal.Environment["UNDERCOWL_KNOWLEDGE"] = terminal.PathOf("nowhere.json");
        terminal.Run("layouts").Refused("nowhere.json", "Build the program again, or name a compiled knowledge file in UNDERCOWL_KNOWLEDGE.");
        terminal.Write("broken.json", "{\n  \"layouts\": oops\n}\n");
        terminal.Environment["UNDERCOWL_KNOWLEDGE"] = terminal.PathOf("broken.json");
        terminal.Run("belief", "visit.jsonl").Refused("broken.json, line 2", "Build the program again from knowledge/.");
    }

    [Fact]
    public void A_job_opened_with_other_knowledge_is_answered_with_todays_and_says_so()
    {
        using var terminal = new Terminal().WithJob();
        terminal.Run("record", "visit.jsonl", "lanyard-clip", "home").Good();
        Assert.False(terminal.Run("belief", "visit.jsonl", "--json").Json().GetProperty("knowledgeChanged").GetBoolean());

        var other = JsonNode.Parse(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "knowledge.json")))!;
        var checks = other["checks"]!.AsArray();
        checks.Remove(checks.Single(c => (string?)c!["id"] == "lanyard-clip"));
        terminal.Write("other.json", other.ToJsonString());
        terminal.Environment["UNDERCOWL_KNOWLEDGE"] = terminal.PathOf("other.json");
        var belief = terminal.Run("belief", "visit.jsonl", "--json").Json();
        Assert.True(belief.GetProperty("knowledgeChanged").GetBoolean());
        Assert.StartsWith("lanyard-clip at side:boat", Assert.Single(belief.GetProperty("withoutEffect").EnumerateArray()).GetString(), StringComparison.Ordinal);
        Assert.Contains("opened with other knowledge than today's", terminal.Run("belief", "visit.jsonl").Good().Out.ReplaceLineEndings(" "), StringComparison.Ordinal);
        var report = terminal.Run("report", "visit.jsonl").Good().Out.ReplaceLineEndings(" ");
        Assert.Contains("opened with other knowledge than today's", report, StringComparison.Ordinal);
        Assert.Contains("Without effect", report, StringComparison.Ordinal);
    }
}
