using System.ComponentModel;
using System.Text.RegularExpressions;

namespace Undercowl.Jobs.Tests.Disk;

public sealed class FlushOrderTests
{
    [Fact]
    public void Bytes_and_names_are_flushed_to_the_disk_before_an_entry_is_acknowledged()
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "system calls are only watched on Linux");
        using var folder = new TemporaryFolder();
        var path = folder.File("bow.jsonl");
        string[] ids;
        try
        {
            using var process = WriterProcess.StartTraced(folder.File("calls"), "once", path);
            ids = process.RestOfOutput();
            Assert.Equal(0, process.WaitForExit());
        }
        catch (Win32Exception)
        {
            Assert.Skip("strace is not installed here");
            return;
        }

        // independent: what the kernel was asked to do, in order, as strace saw it.
        var calls = File.ReadAllLines(folder.File("calls"));
        var at = -1;
        At($"openat\\(.*{Regex.Escape(path)}\", .*O_CREAT");
        At($"fsync\\(\\d+<{Regex.Escape(folder.Path)}>");
        At($"pwrite64\\(\\d+<{Regex.Escape(path)}>");
        At($"f(data)?sync\\(\\d+<{Regex.Escape(path)}>");
        At($"write\\(\\d+<.*{ids[0]}");
        At($"pwrite64\\(\\d+<{Regex.Escape(path)}\\.new>");
        At($"f(data)?sync\\(\\d+<{Regex.Escape(path)}\\.new>");
        At($"rename.*{Regex.Escape(path)}\\.new\", .*{Regex.Escape(path)}\"");
        At($"fsync\\(\\d+<{Regex.Escape(folder.Path)}>");
        At($"write\\(\\d+<.*{ids[1]}");

        void At(string pattern)
        {
            var next = Array.FindIndex(calls, at + 1, call => Regex.IsMatch(call, pattern));
            Assert.True(next >= 0, $"no call like {pattern} after {(at < 0 ? "the start" : calls[at])}");
            at = next;
        }
    }
}
