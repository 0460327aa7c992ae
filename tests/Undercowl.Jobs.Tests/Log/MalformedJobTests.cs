using System.Text;

namespace Undercowl.Jobs.Tests.Log;

public sealed class MalformedJobTests
{
    private static readonly string First = Samples.Entry(new Note("first"), 1).Text;
    private static readonly string Good = Samples.Entry(new Note("good"), 2, 1).Text;
    private static readonly string Last = Samples.Entry(new Note("last"), 3, 2).Text;

    /// <summary>What stands in line 2 instead of the good entry, what the problem says, and what its mend says.</summary>
    public static TheoryData<string, string, string> Cases => new()
    {
        { "", "The line is empty.", "Delete it." },
        { "hello", "not JSON", "Restore the line" },
        { Good[..40], "not JSON", "Restore the line" },
        { Good + " ", "not in canonical form", "Write it as {\"at\"" },
        { " " + Good, "from byte 1 on", "Write it as {\"at\"" },
        { Good + "\r", "carriage return", "LF line ends" },
        { Good.Replace(":2}", ": 2}", StringComparison.Ordinal), "not in canonical form", "Write it as" },
        { Good.Replace("good", "g\\u006fod", StringComparison.Ordinal), "not in canonical form", "Write it as" },
        { Good.Replace("\"seq\":2", "\"seq\":2,\"seq\":2", StringComparison.Ordinal), "Duplicate", "Restore the line" },
        { Good.Replace("\"seq\":2", "\"seq\":2.5", StringComparison.Ordinal), "2.5 is not a whole number", "as text with its unit" },
        { Good.Replace("\"seq\":2", "\"seq\":-2", StringComparison.Ordinal), "\"seq\" is -2", "1 or more" },
        { Good.Replace("\"seq\":2", "\"seq\":null", StringComparison.Ordinal), "\"seq\" is null", "Write it as a number" },
        { Good.Replace("good", "g\\ud800d", StringComparison.Ordinal), "surrogate", "Replace the escaped" },
        { "[" + Good + "]", "not an entry", "one entry, an object" },
        { "{}", "has no \"body\"", "Add \"body\"" },
        { Good.Replace(",\"seq\":2", "", StringComparison.Ordinal), "has no \"seq\"", "Add \"seq\"" },
        { Good.Replace("\"at\":\"2026", "\"at\":\"26", StringComparison.Ordinal), "\"at\" is \"26", "in UTC with milliseconds" },
        { Good.Replace(".125Z", ".125+01:00", StringComparison.Ordinal), "+01:00", "in UTC with milliseconds" },
        { Good.Replace("-7000-", "-4000-", StringComparison.Ordinal), "is not an entry id", "UUID of version 7" },
        { Good.Replace($"[\"{Samples.Id(1)}\"]", $"[\"{Samples.Id(2)}\"]", StringComparison.Ordinal), "names the entry itself", "there before" },
        { Good.Replace($"[\"{Samples.Id(1)}\"]", $"[\"{Samples.Id(5)}\",\"{Samples.Id(4)}\"]", StringComparison.Ordinal), "out of order", "ascending order" },
        { Good.Replace($"[\"{Samples.Id(1)}\"]", $"[\"{Samples.Id(4)}\",\"{Samples.Id(4)}\"]", StringComparison.Ordinal), "names an entry twice", "each once" },
        { Good.Replace("\"kind\":\"note\"", "\"kind\":\"Note\"", StringComparison.Ordinal), "\"kind\" is \"Note\"", "lower-case letters" },
        { Good.Replace("{\"text\":\"good\"}", "\"good\"", StringComparison.Ordinal), "\"body\" is text", "Write it as an object" },
        { Good.Replace("{\"text\":\"good\"}", "{}", StringComparison.Ordinal), "The note has no \"text\"", "Add \"text\"" },
        { Good.Replace(Samples.Device, new string('d', 65), StringComparison.Ordinal), "\"device\" is longer", "short name" },
        { Good.Replace(Samples.Id(2).ToString(), Samples.Id(1).ToString(), StringComparison.Ordinal).Replace($"[\"{Samples.Id(1)}\"]", "[]", StringComparison.Ordinal), "stands in line 1 too", "another copy" },
        { Good.Replace("good", new string('g', Entry.MaxBytes), StringComparison.Ordinal), "more than 1048576", "beside the log" },
        { "{\"a\":" + new string('[', 64) + new string(']', 64) + "}", "not JSON", "Restore the line" },
    };

    [Theory]
    [MemberData(nameof(Cases))]
    public void A_damaged_line_is_told_with_file_line_and_mend_and_costs_no_other_line(string line, string what, string mend)
    {
        var reading = Job.Parse(Encoding.UTF8.GetBytes($"{First}\n{line}\n{Last}\n"), "bow.jsonl");
        var problem = Assert.Single(reading.Problems);
        Assert.Equal(("bow.jsonl", 2), (problem.Source, problem.Line));
        Assert.Contains(what, problem.What, StringComparison.Ordinal);
        Assert.Contains(mend, problem.Mend, StringComparison.Ordinal);
        Assert.StartsWith("bow.jsonl, line 2: ", Assert.Throws<JobException>(reading.Whole).Message, StringComparison.Ordinal);
        Assert.Equal([Samples.Id(1), Samples.Id(3)], reading.Job.Entries.Select(entry => entry.Id));
        Assert.Null(reading.TornAt);
    }

    [Fact]
    public void Bytes_that_are_not_utf8_are_told()
    {
        byte[] bytes = [.. Encoding.UTF8.GetBytes($"{First}\n{Good}\n{Last}\n")];
        bytes[First.Length + 1 + Good.IndexOf("good", StringComparison.Ordinal)] = 0xFF;
        var problem = Assert.Single(Job.Parse(bytes, "bow.jsonl").Problems);
        Assert.Equal((2, "The text is not UTF-8."), (problem.Line, problem.What));
    }

    [Fact]
    public void A_byte_order_mark_is_told()
    {
        var problem = Assert.Single(Job.Parse(Encoding.UTF8.GetBytes($"\uFEFF{First}\n{Good}\n"), "bow.jsonl").Problems);
        Assert.Equal(1, problem.Line);
        Assert.Contains("without one", problem.Mend, StringComparison.Ordinal);
    }

    [Fact]
    public void Entries_that_follow_themselves_in_a_circle_are_told_and_those_after_them_are_kept()
    {
        string[] lines = [Samples.Entry(new Note("a"), 4, 5).Text, Samples.Entry(new Note("b"), 5, 4).Text, Samples.Entry(new Note("after"), 6, 5).Text];
        var reading = Job.Parse(Encoding.UTF8.GetBytes(string.Concat(lines.Select(line => line + "\n"))), "bow.jsonl");
        Assert.Equal([1, 2], reading.Problems.Select(problem => problem.Line));
        Assert.All(reading.Problems, problem => Assert.Contains("follows itself", problem.What, StringComparison.Ordinal));
        Assert.Equal(Samples.Id(6), Assert.Single(reading.Job.Entries).Id);
    }

    [Fact]
    public void Every_bad_line_is_told_in_order()
    {
        var reading = Job.Parse(Encoding.UTF8.GetBytes($"x\n{First}\n\n{Good}\ny\n{Last}\n"));
        Assert.Equal([1, 3, 5], reading.Problems.Select(problem => problem.Line));
        Assert.Equal(3, reading.Job.Count);
    }

    [Fact]
    public void The_same_line_twice_counts_once()
    {
        var reading = Job.Parse(Encoding.UTF8.GetBytes($"{First}\n{Good}\n{First}\n"));
        Assert.Empty(reading.Problems);
        Assert.Equal(2, reading.Job.Count);
    }

    [Fact]
    public void Nothing_is_an_empty_job()
    {
        var reading = Job.Parse(ReadOnlyMemory<byte>.Empty);
        Assert.Empty(reading.Problems);
        Assert.Equal(0, reading.Job.Count);
        Assert.Empty(reading.Job.Heads);
    }
}
