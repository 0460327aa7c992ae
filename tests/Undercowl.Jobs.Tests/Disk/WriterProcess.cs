using System.Diagnostics;
using System.Text;

namespace Undercowl.Jobs.Tests.Disk;

/// <summary>Another process that writes to a job; see the program Undercowl.Jobs.Writer.</summary>
internal sealed class WriterProcess : IDisposable
{
    private readonly Process process;

    private WriterProcess(Process process) => this.process = process;

    public static WriterProcess Start(params string[] arguments) => Start(Environment.ProcessPath is { } host && Path.GetFileNameWithoutExtension(host) == "dotnet" ? host : "dotnet", [WriterPath, .. arguments]);

    /// <summary>Starts it from a shell that may make at most so many kibibytes of a file, the signal for that ignored.</summary>
    public static WriterProcess StartLimited(int kibibytes, params string[] arguments) =>
        Start("/bin/bash", ["-c", $"trap '' XFSZ; ulimit -f {kibibytes}; exec dotnet \"$@\"", "bash", WriterPath, .. arguments]);

    /// <summary>Starts it with its system calls written to a file, descriptors with their paths.</summary>
    public static WriterProcess StartTraced(string traceFile, params string[] arguments) =>
        Start("strace", ["-f", "-y", "-s", "64", "-e", "trace=pwrite64,write,fsync,fdatasync,rename,renameat,renameat2,openat", "-o", traceFile, "dotnet", WriterPath, .. arguments]);

    public static string WriterPath => Path.Combine(AppContext.BaseDirectory, "Undercowl.Jobs.Writer.dll");

    /// <summary>What it prints next; null at its end. A line that was cut off by the kill has no line feed and is not acknowledged.</summary>
    public string? ReadLine()
    {
        var line = new StringBuilder();
        for (var next = process.StandardOutput.Read(); next >= 0; next = process.StandardOutput.Read())
        {
            if (next == '\n')
                return line.ToString();
            line.Append((char)next);
        }

        return null;
    }

    public void Say(string line) => process.StandardInput.WriteLine(line);

    public void Kill() => process.Kill();

    /// <summary>Everything it printed, of which only whole lines count.</summary>
    public string[] RestOfOutput()
    {
        var text = process.StandardOutput.ReadToEnd();
        var end = text.LastIndexOf('\n');
        return end < 0 ? [] : text[..end].Split('\n');
    }

    public int WaitForExit()
    {
        process.WaitForExit();
        return process.ExitCode;
    }

    public void Dispose()
    {
        // Until it is gone its files are open, and a file system that holds one cannot be unmounted.
        process.Kill();
        process.WaitForExit();
        process.Dispose();
    }

    private static WriterProcess Start(string program, string[] arguments) => new(Process.Start(
        new ProcessStartInfo(program, arguments)
        {
            RedirectStandardOutput = true,
            RedirectStandardInput = true,
            // Without W^X the runtime maps no large file of its own, which a limit on file sizes would forbid; and it starts faster.
            Environment = { ["DOTNET_TieredPGO"] = "0", ["DOTNET_EnableWriteXorExecute"] = "0" },
        })!);
}
