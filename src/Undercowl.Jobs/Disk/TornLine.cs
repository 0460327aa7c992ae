using Microsoft.Win32.SafeHandles;

namespace Undercowl.Jobs;

/// <summary>
/// Puts the end of a log right after a crash. Only one entry is ever under way, and it was not acknowledged, so only
/// the last line can be unfinished; its bytes are kept in a file beside, because they may be all there is of a reading.
/// </summary>
internal static class TornLine
{
    public static (long Length, IReadOnlyList<JobProblem> Mended) Mend(string path, string name, SafeFileHandle data, byte[] bytes, JobReading reading)
    {
        if (reading.LacksFinalNewline)
        {
            RandomAccess.Write(data, "\n"u8, bytes.Length);
            RandomAccess.FlushToDisk(data);
            return (bytes.Length + 1, [new JobProblem(name, LinesIn(bytes), "The last line was whole but for its end.", "The line feed was added; nothing is to be done.")]);
        }

        if (reading.TornAt is not { } start)
            return (bytes.Length, []);
        Keep(path + ".torn", bytes.AsSpan(start));
        RandomAccess.SetLength(data, start);
        RandomAccess.FlushToDisk(data);
        return (start, [new JobProblem(
            name, LinesIn(bytes.AsSpan(0, start)) + 1,
            $"The line was not finished when the program or the machine stopped; its {bytes.Length - start} bytes were never acknowledged.",
            $"They were moved to {name}.torn; enter that step again if it is missing.")]);
    }

    private static int LinesIn(ReadOnlySpan<byte> bytes) => bytes.Count((byte)'\n') + (bytes is [.., not (byte)'\n'] ? 1 : 0);

    private static void Keep(string path, ReadOnlySpan<byte> torn)
    {
        using var file = new FileStream(path, FileMode.Append, FileAccess.Write, FileShare.Read, bufferSize: 0);
        file.Write([.. torn, (byte)'\n']);
        file.Flush(flushToDisk: true);
        DirectoryFlush.Flush(System.IO.Path.GetDirectoryName(path)!);
    }
}
