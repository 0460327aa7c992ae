using System.Diagnostics;

namespace Undercowl.Jobs.Tests.Disk;

public sealed class FullDiskTests(ITestOutputHelper output)
{
    [Fact]
    public void On_a_full_disk_nothing_is_recorded_the_file_is_as_before_and_work_goes_on_when_there_is_room()
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "a file system of limited size is only made on Linux");
        using var folder = new TemporaryFolder();
        Assert.SkipUnless(Run("mount", "-t", "tmpfs", "-o", "size=128k", "tmpfs", folder.Path) == 0, "mounting a file system of limited size is not permitted here");
        try
        {
            var ballast = folder.File("ballast");
            File.WriteAllBytes(ballast, new byte[30_000]);
            FillAndCheck(WriterProcess.Start("fill", folder.File("bow.jsonl")), folder.File("bow.jsonl"), "No space left", () => File.Delete(ballast));
        }
        finally
        {
            Assert.Equal(0, Run("umount", folder.Path));
        }
    }

    [Fact]
    public void On_a_full_disk_a_merge_leaves_the_old_file_in_force()
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "a file system of limited size is only made on Linux");
        using var folder = new TemporaryFolder();
        Assert.SkipUnless(Run("mount", "-t", "tmpfs", "-o", "size=128k", "tmpfs", folder.Path) == 0, "mounting a file system of limited size is not permitted here");
        try
        {
            var path = folder.File("bow.jsonl");
            using var file = JobFile.Open(path);
            file.Record(new EntryWriter("here", new SetClock(), Seeded.Random(1)), new Note(new string('a', 50_000)));
            var before = File.ReadAllBytes(path);
            var error = Assert.Throws<JobException>(() => file.MergeIn(Job.Of([Samples.Entry(new Note(new string('b', 60_000)))])));
            Assert.Contains("Nothing was merged", error.Message, StringComparison.Ordinal);
            Assert.Equal(before, File.ReadAllBytes(path));
            Assert.False(File.Exists(path + ".new"));
            Assert.Equal(2, file.Record(new EntryWriter("here", new SetClock(), Seeded.Random(2)), new Note("goes on")).Sequence);
            Assert.Equal(file.Job.ToBytes(), File.ReadAllBytes(path));
        }
        finally
        {
            Assert.Equal(0, Run("umount", folder.Path));
        }
    }

    [Fact]
    public void A_file_that_may_not_grow_any_more_behaves_like_a_full_disk()
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "the limit is set with a Linux shell");
        using var folder = new TemporaryFolder();
        var path = folder.File("bow.jsonl");
        FillAndCheck(WriterProcess.StartLimited(64, "fill", path), path, "", makeRoom: null);
        Assert.InRange(new FileInfo(path).Length, 64 * 1024 - 4000, 64 * 1024);
    }

    private void FillAndCheck(WriterProcess process, string path, string reason, Action? makeRoom)
    {
        using (process)
        {
            var acknowledged = new List<EntryId>();
            string? line;
            while ((line = process.ReadLine()) is not null && !line.StartsWith("refused", StringComparison.Ordinal))
                acknowledged.Add(EntryId.Parse(line));
            output.WriteLine($"{acknowledged.Count} entries, then: {line}");
            Assert.NotNull(line);
            Assert.StartsWith("refused bow.jsonl: Nothing was recorded", line, StringComparison.Ordinal);
            Assert.Contains(reason, line, StringComparison.Ordinal);
            Assert.InRange(acknowledged.Count, 5, 100);

            // The bytes are those of the acknowledged entries and no others: the half line was cut back at once.
            var reading = JobFile.Read(path);
            Assert.Empty(reading.Problems);
            Assert.Null(reading.TornAt);
            Assert.Equal(acknowledged, reading.Job.Entries.Select(entry => entry.Id));
            Assert.Equal(reading.Job.ToBytes(), File.ReadAllBytes(path));
            if (makeRoom is null)
                return;
            makeRoom();
            process.Say("again");
            acknowledged.Add(EntryId.Parse(process.ReadLine()!));
            Assert.Equal(0, process.WaitForExit());
            Assert.Equal(acknowledged, JobFile.Read(path).Whole().Entries.Select(entry => entry.Id));
        }
    }

    private static int Run(string program, params string[] arguments)
    {
        try
        {
            using var process = Process.Start(new ProcessStartInfo(program, arguments) { RedirectStandardError = true })!;
            process.StandardError.ReadToEnd();
            process.WaitForExit();
            return process.ExitCode;
        }
        catch (System.ComponentModel.Win32Exception)
        {
            return -1;
        }
    }
}
