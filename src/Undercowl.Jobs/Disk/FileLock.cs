using Microsoft.Win32.SafeHandles;

namespace Undercowl.Jobs;

/// <summary>
/// The right to write to a job, held as an exclusively opened file beside it. The operating system gives it back when
/// the process ends, however it ends. The file is left behind on purpose: removing it would let two processes hold two.
/// </summary>
internal static class FileLock
{
    public static SafeFileHandle Take(string path, string jobName)
    {
        try
        {
            return File.OpenHandle(path, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None);
        }
        catch (UnauthorizedAccessException error)
        {
            throw new JobException(new JobProblem(jobName, 0, "The job cannot be written here: access is denied.", "Copy it to a folder of your own and open it there."), error);
        }
        catch (IOException error) when (File.Exists(path))
        {
            throw new JobException(
                new JobProblem(jobName, 0, "The job is open in another program on this machine.", "Close it there first, or work on a copy and merge the two later."), error);
        }
        catch (IOException error)
        {
            throw new JobException(new JobProblem(jobName, 0, $"The job cannot be locked: {error.Message}", "Check the folder's permissions and free space."), error);
        }
    }
}
