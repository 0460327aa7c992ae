using System.Text;

namespace Undercowl.Jobs.Tests.Disk;

public sealed class JobFileTests : IDisposable
{
    private readonly TemporaryFolder folder = new();
    private readonly EntryWriter writer = new("here", new SetClock(), Seeded.Random(1));

    private string Bow => folder.File("bow.jsonl");

    public void Dispose() => folder.Dispose();

    [Fact]
    public void What_was_appended_is_there_when_opened_again()
    {
        Job written;
        using (var file = JobFile.Open(Bow))
        {
            file.Record(writer, Samples.Opened());
            file.Record(writer, new Note("zündet nicht\nsays the owner"));
            written = file.Job;
        }

        Assert.Equal(written.ToBytes(), File.ReadAllBytes(Bow));
        using var again = JobFile.Open(Bow);
        Assert.Equal(written.ToBytes(), again.Job.ToBytes());
        Assert.Empty(again.Mended);
        Assert.Equal(3, again.Record(writer, new Note("more")).Sequence);
    }

    [Fact]
    public void A_job_can_be_read_while_it_is_open_for_writing()
    {
        using var file = JobFile.Open(Bow);
        file.Record(writer, Samples.Opened());
        Assert.Equal(1, JobFile.Read(Bow).Job.Count);
        file.Record(writer, new Note("more"));
        Assert.Equal(2, JobFile.Read(Bow).Job.Count);
    }

    [Fact]
    public void A_second_opening_is_refused_naming_the_file_and_what_to_do_and_works_after_closing()
    {
        using (JobFile.Open(Bow))
        {
            var problem = Assert.Throws<JobException>(() => JobFile.Open(Bow)).Problem;
            Assert.Equal("bow.jsonl", problem.Source);
            Assert.Contains("open in another program", problem.What, StringComparison.Ordinal);
            Assert.Contains("merge the two later", problem.Mend, StringComparison.Ordinal);
        }

        JobFile.Open(Bow).Dispose();
    }

    [Fact]
    public void A_second_process_is_refused()
    {
        using var holder = WriterProcess.Start("hold", Bow);
        Assert.Equal("held", holder.ReadLine());
        Assert.Contains("open in another program", Assert.Throws<JobException>(() => JobFile.Open(Bow)).Message, StringComparison.Ordinal);
        using (var second = WriterProcess.Start("hold", Bow))
        {
            Assert.StartsWith("refused bow.jsonl: The job is open in another program", second.ReadLine(), StringComparison.Ordinal);
            Assert.Equal(3, second.WaitForExit());
        }

        holder.Kill();
        holder.WaitForExit();
        JobFile.Open(Bow).Dispose();
    }

    [Fact]
    public void The_lock_outlives_a_merge_that_puts_another_file_in_place()
    {
        using var file = JobFile.Open(Bow);
        file.Record(writer, Samples.Opened());
        file.MergeIn(Job.Of([Samples.Entry(new Note("elsewhere"), 1)]));
        Assert.Throws<JobException>(() => JobFile.Open(Bow));
        file.Record(writer, new Note("after the merge"));
        Assert.Equal(file.Job.ToBytes(), File.ReadAllBytes(Bow));
        Assert.Equal(3, file.Job.Count);
        Assert.False(File.Exists(Bow + ".new"));
    }

    [Fact]
    public void A_merge_that_would_lose_an_entry_is_refused()
    {
        using var file = JobFile.Open(Bow);
        var lost = file.Record(writer, Samples.Opened());
        var before = File.ReadAllBytes(Bow);
        Assert.Contains(lost.Id.ToString(), Assert.Throws<JobException>(() => file.Replace(Job.Empty)).Message, StringComparison.Ordinal);
        Assert.Equal(before, File.ReadAllBytes(Bow));
    }

    [Fact]
    public void An_unfinished_merge_left_by_a_crash_is_not_in_force()
    {
        using (var file = JobFile.Open(Bow))
            file.Record(writer, Samples.Opened());
        File.WriteAllText(Bow + ".new", "{\"half");
        using var again = JobFile.Open(Bow);
        Assert.Equal(1, again.Job.Count);
        Assert.False(File.Exists(Bow + ".new"));
    }

    [Fact]
    public void A_last_line_torn_at_any_byte_is_moved_aside_and_the_rest_is_untouched()
    {
        using (var file = JobFile.Open(Bow))
        {
            file.Record(writer, Samples.Opened());
            file.Record(writer, new Note("kept"));
            file.Record(writer, new Note("torn ü"));
        }

        var whole = File.ReadAllBytes(Bow);
        var lines = JobFile.Read(Bow).Job.Entries.Select(entry => entry.Line.Length + 1).ToArray();
        var kept = whole[..(lines[0] + lines[1])];
        for (var cut = kept.Length + 1; cut < whole.Length - 1; cut++)
        {
            File.WriteAllBytes(Bow, whole[..cut]);
            File.Delete(Bow + ".torn");
            using var file = JobFile.Open(Bow);
            var mended = Assert.Single(file.Mended);
            Assert.Equal(("bow.jsonl", 3), (mended.Source, mended.Line));
            Assert.Contains($"its {cut - kept.Length} bytes", mended.What, StringComparison.Ordinal);
            Assert.Contains("bow.jsonl.torn", mended.Mend, StringComparison.Ordinal);
            Assert.Equal(kept, File.ReadAllBytes(Bow));
            Assert.Equal([.. whole[kept.Length..cut], (byte)'\n'], File.ReadAllBytes(Bow + ".torn"));
            file.Record(writer, new Note("on"));
            Assert.Equal(3, JobFile.Read(Bow).Whole().Count);
        }
    }

    [Fact]
    public void A_whole_last_line_without_its_end_is_kept_and_ended()
    {
        using (var file = JobFile.Open(Bow))
            file.Record(writer, Samples.Opened());
        var whole = File.ReadAllBytes(Bow);
        File.WriteAllBytes(Bow, whole[..^1]);
        using var again = JobFile.Open(Bow);
        Assert.Equal(1, Assert.Single(again.Mended).Line);
        Assert.Equal(whole, File.ReadAllBytes(Bow));
        again.Record(writer, new Note("on"));
        Assert.Equal(2, JobFile.Read(Bow).Whole().Count);
    }

    [Fact]
    public void Zeros_left_by_a_power_cut_in_the_last_line_are_moved_aside()
    {
        using (var file = JobFile.Open(Bow))
            file.Record(writer, Samples.Opened());
        var whole = File.ReadAllBytes(Bow);
        File.WriteAllBytes(Bow, [.. whole, .. "{\"at\":"u8, .. new byte[500], .. "}"u8, (byte)'\n']);
        using var again = JobFile.Open(Bow);
        Assert.Single(again.Mended);
        Assert.Equal(whole, File.ReadAllBytes(Bow));
    }

    [Fact]
    public void Torn_lines_gather_in_one_file()
    {
        foreach (var half in new[] { "{\"first", "{\"second" })
        {
            File.AppendAllText(Bow, half);
            JobFile.Open(Bow).Dispose();
        }

        Assert.Equal("{\"first\n{\"second\n", File.ReadAllText(Bow + ".torn"));
        Assert.Equal("", File.ReadAllText(Bow));
    }

    [Fact]
    public void Damage_in_the_middle_is_an_error_with_its_line_and_nothing_is_touched()
    {
        using (var file = JobFile.Open(Bow))
        {
            file.Record(writer, Samples.Opened());
            file.Record(writer, new Note("second"));
            file.Record(writer, new Note("third"));
        }

        var damaged = Encoding.UTF8.GetBytes(File.ReadAllText(Bow).Replace("\"second\"", "\"second", StringComparison.Ordinal));
        File.WriteAllBytes(Bow, [.. damaged, .. "{\"torn"u8]);
        var problem = Assert.Throws<JobException>(() => JobFile.Open(Bow)).Problem;
        Assert.Equal(("bow.jsonl", 2), (problem.Source, problem.Line));
        Assert.Contains("Restore the line", problem.Mend, StringComparison.Ordinal);
        Assert.Equal([.. damaged, .. "{\"torn"u8], File.ReadAllBytes(Bow));
        Assert.False(File.Exists(Bow + ".torn"));
        Assert.Equal(2, JobFile.Read(Bow).Job.Count);
        // And the lock was given back.
        File.WriteAllText(Bow, "");
        JobFile.Open(Bow).Dispose();
    }

    [Fact]
    public void Damage_in_the_last_line_that_has_its_end_is_an_error_and_not_taken_for_torn()
    {
        using (var file = JobFile.Open(Bow))
            file.Record(writer, new Note("only"));
        File.WriteAllText(Bow, File.ReadAllText(Bow).Replace("only\"", "only", StringComparison.Ordinal));
        Assert.Equal(1, Assert.Throws<JobException>(() => JobFile.Open(Bow)).Problem.Line);
    }

    [Fact]
    public void A_file_changed_underneath_is_noticed_before_anything_is_written()
    {
        using var file = JobFile.Open(Bow);
        file.Record(writer, Samples.Opened());
        File.AppendAllText(Bow, "x");
        Assert.Contains("changed by another program", Assert.Throws<JobException>(() => file.Record(writer, new Note("lost?"))).Message, StringComparison.Ordinal);
        Assert.Equal(1, file.Job.Count);
        File.Delete(Bow);
        Assert.Throws<JobException>(() => file.Record(writer, new Note("lost?")));
    }

    [Fact]
    public void An_entry_that_is_there_already_is_not_written_again()
    {
        using var file = JobFile.Open(Bow);
        var entry = file.Record(writer, Samples.Opened());
        file.Append(entry);
        Assert.Equal(1, JobFile.Read(Bow).Job.Count);
        Assert.Equal(entry.Line.Length + 1, new FileInfo(Bow).Length);
    }

    [Fact]
    public void Folders_and_files_that_are_not_there_are_named()
    {
        Assert.Contains("does not exist", Assert.Throws<JobException>(() => JobFile.Open(folder.File("none/bow.jsonl"))).Message, StringComparison.Ordinal);
        Assert.StartsWith("none.jsonl: The job cannot be read", Assert.Throws<JobException>(() => JobFile.Read(folder.File("none.jsonl"))).Message, StringComparison.Ordinal);
        Assert.Contains("is a folder", Assert.Throws<JobException>(() => JobFile.Open(folder.Path)).Message, StringComparison.Ordinal);
        Assert.False(File.Exists(folder.Path + ".lock"));
    }
}
