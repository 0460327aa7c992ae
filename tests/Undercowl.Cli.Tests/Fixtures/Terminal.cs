using System.Diagnostics;

namespace Undercowl.Cli.Tests.Fixtures;

/// <summary>
/// A folder of its own and the real program run in it: real processes, real files. Commands run in that folder, so job
/// files are named as a person would name them.
/// </summary>
internal sealed class Terminal : IDisposable
{
    private static readonly string Program = Path.Combine(AppContext.BaseDirectory, "undercowl");

    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("undercowl-test-");

    public string Folder => _folder.FullName;

    /// <summary>Added to the environment of every process, or taken out of it when null.</summary>
    public Dictionary<string, string?> Environment { get; } = new() { ["NO_COLOR"] = "1", ["COLUMNS"] = null, ["UNDERCOWL_KNOWLEDGE"] = null };

    public string PathOf(string file) => Path.Combine(Folder, file);

    public string Read(string file) => File.ReadAllText(PathOf(file));

    public void Write(string file, string text)
    {
        Directory.CreateDirectory(Path.GetDirectoryName(PathOf(file))!);
        File.WriteAllText(PathOf(file), text);
    }

    /// <summary>A file that may be run.</summary>
    public void WriteProgram(string file, string text)
    {
        Write(file, text);
        using var chmod = Process.Start("chmod", ["+x", PathOf(file)]);
        chmod.WaitForExit();
    }

    public Ran Run(params string[] arguments) => Feed("", arguments);

    /// <summary>Runs with this on its standard input, which then ends.</summary>
    public Ran Feed(string input, params string[] arguments)
    {
        using var process = Begin(Program, arguments);
        process.StandardInput.Write(input);
        return End(process);
    }

    /// <summary>Runs another program in the folder, such as a shell.</summary>
    public Ran Other(string program, params string[] arguments)
    {
        using var process = Begin(program, arguments);
        return End(process);
    }

    /// <summary>Starts the program and leaves its streams open.</summary>
    public Process Start(params string[] arguments) => Begin(Program, arguments);

    public static Ran End(Process process)
    {
        process.StandardInput.Close();
        var error = process.StandardError.ReadToEndAsync();
        var output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return new Ran(process.ExitCode, output, error.GetAwaiter().GetResult());
    }

    public static void Interrupt(Process process)
    {
        using var kill = Process.Start("kill", ["-INT", process.Id.ToString(System.Globalization.CultureInfo.InvariantCulture)]);
        kill.WaitForExit();
    }

    /// <summary>A job of the smaller layout with this name, begun.</summary>
    public Terminal WithJob(string name = "visit.jsonl", string layout = "two-stroke-3-cdi", string complaint = "no-start")
    {
        Run("start", name, "--layout", layout, "--complaint", complaint).Good();
        return this;
    }

    public void Dispose() => _folder.Delete(recursive: true);

    private Process Begin(string program, string[] arguments)
    {
        var start = new ProcessStartInfo(program, arguments)
        {
            WorkingDirectory = Folder,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            RedirectStandardInput = true,
        };
        foreach (var (name, value) in Environment)
        {
            if (value is null)
            {
                start.Environment.Remove(name);
            }
            else
            {
                start.Environment[name] = value;
            }
        }

        return Process.Start(start)!;
    }
}
