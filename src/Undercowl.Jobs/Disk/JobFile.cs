using System.Runtime.Versioning;
using Microsoft.Win32.SafeHandles;

namespace Undercowl.Jobs;

/// <summary>
/// A job on disk, open for writing by this process alone. What <see cref="Append"/> returned from is on the disk; what
/// it threw on is not in the file. Reading needs no lock (<see cref="Read"/>). The lock is advisory and local: it does
/// not hold on network file systems without locks, nor against programs that do not ask. Not for use by several threads.
/// </summary>
[UnsupportedOSPlatform("browser")]
public sealed class JobFile : IDisposable
{
    private readonly SafeFileHandle @lock;
    private SafeFileHandle data;
    private long length;
    private bool broken;

    private JobFile(string path, SafeFileHandle @lock, SafeFileHandle data, long length, Job job, IReadOnlyList<JobProblem> mended, IReadOnlyList<JobProblem> notices)
    {
        (Path, this.@lock, this.data, this.length, Job, Mended, Notices) = (path, @lock, data, length, job, mended, notices);
    }

    public string Path { get; }

    /// <summary>The entries on disk.</summary>
    public Job Job { get; private set; }

    /// <summary>What was put right when the file was opened: an unfinished last line moved aside, a line feed added.</summary>
    public IReadOnlyList<JobProblem> Mended { get; }

    /// <summary>What is worth saying and does no harm; see <see cref="JobReading.Notices"/>.</summary>
    public IReadOnlyList<JobProblem> Notices { get; }

    /// <summary>
    /// Opens a job for writing, making the file when there is none. Throws <see cref="JobException"/> when another
    /// process has it open, and when a line other than an unfinished last one is damaged; the file is then untouched.
    /// </summary>
    public static JobFile Open(string path)
    {
        path = System.IO.Path.GetFullPath(path);
        var name = System.IO.Path.GetFileName(path);
        if (!Directory.Exists(System.IO.Path.GetDirectoryName(path)))
            throw new JobException(new JobProblem(name, 0, $"The folder {System.IO.Path.GetDirectoryName(path)} does not exist.", "Make the folder, or choose another."));
        if (Directory.Exists(path))
            throw new JobException(new JobProblem(name, 0, "This is a folder, not a job.", "Name the job's file in it."));
        var held = FileLock.Take(path + ".lock", name);
        try
        {
            return OpenLocked(path, name, held);
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            held.Dispose();
            throw new JobException(new JobProblem(name, 0, $"The job cannot be opened: {error.Message}", "Check the folder's permissions and free space."), error);
        }
        catch
        {
            held.Dispose();
            throw;
        }
    }

    /// <summary>Reads a job without locking it and without mending anything. Another process may be writing: an unfinished last line is then normal.</summary>
    public static JobReading Read(string path)
    {
        var name = System.IO.Path.GetFileName(path);
        try
        {
            using var stream = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
            var bytes = new byte[stream.Length];
            stream.ReadExactly(bytes);
            return Job.Parse(bytes, name);
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            throw new JobException(new JobProblem(name, 0, $"The job cannot be read: {error.Message}", "Check the name and the permissions."), error);
        }
    }

    /// <summary>
    /// Writes one entry and returns when it is on the disk. Throws <see cref="JobException"/> when it could not be
    /// recorded; the file is then as it was before.
    /// </summary>
    public void Append(Entry entry)
    {
        var next = Job.With(entry);
        if (ReferenceEquals(next, Job))
            return;
        RequireUsable();
        var line = new byte[entry.Line.Length + 1];
        entry.Line.CopyTo(line);
        line[^1] = (byte)'\n';
        try
        {
            RandomAccess.Write(data, line, length);
            RandomAccess.FlushToDisk(data);
        }
        catch (Exception error)
        {
            // Whatever it was: a limit on file sizes, for one, comes as an ArgumentOutOfRangeException.
            TakeBack();
            throw Failed("Nothing was recorded", error);
        }

        length += line.Length;
        Job = next;
    }

    /// <summary>Makes the next entry and appends it.</summary>
    public Entry Record(EntryWriter writer, EntryBody body)
    {
        var entry = writer.Next(Job, body);
        Append(entry);
        return entry;
    }

    /// <summary>
    /// Takes another copy's entries in and rewrites the file in canonical order, all or nothing: a whole new file is
    /// written and flushed, then put in the place of the old one.
    /// </summary>
    public void MergeIn(Job other) => Replace(Job.Merge(other));

    /// <summary>Puts a job with all of this one's entries in its place. Throws <see cref="JobException"/> when an entry would be lost.</summary>
    public void Replace(Job whole)
    {
        if (Job.Entries.FirstOrDefault(entry => whole.Find(entry.Id) is not { } kept || !kept.Equals(entry)) is { } lost)
            throw new JobException(new JobProblem(Name, 0, $"Entry {lost.Id} would be lost.", "Merge the two jobs first; entries are withdrawn, never removed."));
        RequireUsable();
        var bytes = whole.ToBytes();
        SafeFileHandle fresh;
        try
        {
            fresh = WholeFile.Write(Path, bytes);
        }
        catch (Exception error)
        {
            throw Failed("Nothing was merged", error);
        }

        data.Dispose();
        (data, length, Job) = (fresh, bytes.Length, whole);
        try
        {
            DirectoryFlush.Flush(System.IO.Path.GetDirectoryName(Path)!);
        }
        catch (IOException error)
        {
            // The new file is in force, only its name may not outlive a power cut; the old one would then be back, whole.
            throw Failed("The merge was done but may not be on the disk", error);
        }
    }

    public void Dispose()
    {
        data.Dispose();
        @lock.Dispose();
    }

    private string Name => System.IO.Path.GetFileName(Path);

    private static JobFile OpenLocked(string path, string name, SafeFileHandle held)
    {
        WholeFile.ForgetUnfinished(path);
        var isNew = !File.Exists(path);
        // Others may read, and on systems where a rename needs it, put a new file in its place.
        var data = File.OpenHandle(path, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.ReadWrite | FileShare.Delete);
        try
        {
            if (isNew)
                DirectoryFlush.Flush(System.IO.Path.GetDirectoryName(path)!);
            var bytes = new byte[RandomAccess.GetLength(data)];
            for (var at = 0; at < bytes.Length;)
            {
                var read = RandomAccess.Read(data, bytes.AsSpan(at), at);
                at += read > 0 ? read : throw new EndOfStreamException("The file became shorter while it was read.");
            }

            var reading = Job.Parse(bytes, name);
            var job = reading.Whole();
            var (length, mended) = TornLine.Mend(path, name, data, bytes, reading);
            return new JobFile(path, held, data, length, job, mended, reading.Notices);
        }
        catch
        {
            data.Dispose();
            throw;
        }
    }

    private void RequireUsable()
    {
        ObjectDisposedException.ThrowIf(data.IsClosed, this);
        if (broken)
            throw new JobException(new JobProblem(Name, 0, "An earlier failure could not be undone.", "Close the job and open it again: the unfinished line is then moved aside."));
        // A sync or restore program that puts another file here would make us write into one that nobody sees.
        var found = new FileInfo(Path);
        if (!found.Exists || found.Length != length || RandomAccess.GetLength(data) != length)
            throw new JobException(new JobProblem(Name, 0, "The file was changed by another program while it was open.", "Close the job, open it again, and merge if a copy is left over."));
    }

    private void TakeBack()
    {
        try
        {
            RandomAccess.SetLength(data, length);
            RandomAccess.FlushToDisk(data);
        }
        catch (IOException)
        {
            broken = true;
        }
    }

    private JobException Failed(string lead, Exception error) => new(
        new JobProblem(Name, 0, $"{lead}: {error.Message}", "Free some space or check the disk, then enter it again."), error);
}
