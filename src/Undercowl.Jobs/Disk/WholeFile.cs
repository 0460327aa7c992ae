using Microsoft.Win32.SafeHandles;

namespace Undercowl.Jobs;

/// <summary>Replaces a file as one act: written beside it, flushed, renamed over it. The folder is still to be flushed.</summary>
internal static class WholeFile
{
    private const string Suffix = ".new";

    /// <summary>Returns the new file, open. When it throws, the old one is as it was.</summary>
    public static SafeFileHandle Write(string path, byte[] bytes)
    {
        var beside = path + Suffix;
        var fresh = File.OpenHandle(beside, FileMode.Create, FileAccess.ReadWrite, FileShare.ReadWrite | FileShare.Delete);
        try
        {
            RandomAccess.Write(fresh, bytes, 0);
            RandomAccess.FlushToDisk(fresh);
            File.Move(beside, path, overwrite: true);
            return fresh;
        }
        catch
        {
            fresh.Dispose();
            File.Delete(beside);
            throw;
        }
    }

    /// <summary>Removes what a crash in the middle left; it was never in force.</summary>
    public static void ForgetUnfinished(string path) => File.Delete(path + Suffix);
}
