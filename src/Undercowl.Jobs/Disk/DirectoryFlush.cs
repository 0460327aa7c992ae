using System.ComponentModel;
using System.Runtime.InteropServices;

namespace Undercowl.Jobs;

/// <summary>
/// Makes a new or renamed file's name survive a power cut. On Unix a file's name lives in its directory, which must be
/// flushed for itself, and .NET opens no directories; on Windows the file system's journal sees to it.
/// </summary>
internal static partial class DirectoryFlush
{
    public static void Flush(string directory)
    {
        if (OperatingSystem.IsWindows())
            return;
        // O_RDONLY is 0 on every Unix.
        var descriptor = Open(directory, 0);
        if (descriptor < 0)
            throw Failed(directory);
        try
        {
            if (FSync(descriptor) != 0)
                throw Failed(directory);
        }
        finally
        {
            _ = Close(descriptor);
        }
    }

    private static IOException Failed(string directory) =>
        new($"The folder {directory} cannot be flushed to disk: {new Win32Exception(Marshal.GetLastPInvokeError()).Message}");

    [LibraryImport("libc", EntryPoint = "open", SetLastError = true, StringMarshalling = StringMarshalling.Utf8)]
    private static partial int Open(string path, int flags);

    [LibraryImport("libc", EntryPoint = "fsync", SetLastError = true)]
    private static partial int FSync(int descriptor);

    [LibraryImport("libc", EntryPoint = "close", SetLastError = true)]
    private static partial int Close(int descriptor);
}
