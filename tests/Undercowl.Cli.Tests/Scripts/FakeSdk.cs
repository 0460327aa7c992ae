using Undercowl.Cli.Tests.Fixtures;

namespace Undercowl.Cli.Tests.Scripts;

/// <summary>
/// A copy of the shell scripts over a tree of empty folders, with a search path that holds the usual small programs and,
/// when wanted, a dotnet that only writes down what it was asked for and "builds" a program that echoes its arguments, and a
/// linker.
/// </summary>
internal sealed class FakeSdk : IDisposable
{
    private static readonly string[] SmallPrograms =
        ["bash", "sh", "env", "dirname", "find", "mktemp", "mkdir", "mv", "rm", "cat", "flock", "chmod", "sed", "grep", "head", "tail", "basename", "touch", "nproc", "xargs", "wc"];

    private readonly Terminal _terminal = new();

    public FakeSdk(bool sdk = true, string version = "10.0.100", bool builds = true, bool linker = false, bool links = true)
    {
        foreach (var script in (string[])["run", "undercowl", "test"])
        {
            File.Copy(Repository.PathOf(script), _terminal.PathOf(script));
        }

        foreach (var file in (string[])["src/Room/One.cs", "src/Room/obj/made.cs", "knowledge/parts/a.yaml", "demo/demo.json", "Directory.Build.props", "Directory.Packages.props", "global.json"])
        {
            _terminal.Write(file, "");
            Age(file, TimeSpan.FromHours(1));
        }

        Directory.CreateDirectory(_terminal.PathOf("bin"));
        foreach (var program in SmallPrograms)
        {
            var from = ((string[])["/usr/bin", "/bin"]).Select(folder => Path.Combine(folder, program)).FirstOrDefault(File.Exists);
            if (from is not null)
            {
                File.CreateSymbolicLink(_terminal.PathOf($"bin/{program}"), from);
            }
        }

        if (sdk)
        {
            _terminal.WriteProgram("bin/dotnet", $$"""
                #!/bin/bash
                if [[ $1 == --version ]]; then echo {{version}}; exit 0; fi
                all="$*"
                form=${all##*ForThisMachine=}
                form=${form%% *}
                echo "$1 $form" >> "{{_terminal.PathOf("asked")}}"
                {{(builds ? "" : "echo 'error: it does not compile'; exit 1")}}
                {{(links ? "" : "[[ $form != native ]] || { echo 'error: it does not link'; exit 1; }")}}
                while [[ $# -gt 0 ]]; do [[ $1 == -o ]] && out=$2; shift; done
                [[ -n ${out:-} ]] || exit 0
                mkdir -p "$out"
                printf '#!/bin/bash\necho "ran: $*"\n' > "$out/undercowl"
                chmod +x "$out/undercowl"
                """);
        }

        if (linker)
        {
            _terminal.WriteProgram("bin/gcc", "#!/bin/bash");
        }

        _terminal.Environment["PATH"] = _terminal.PathOf("bin");
        _terminal.Environment["DOTNET_ROOT"] = null;
    }

    /// <summary>What was asked of dotnet since the start, <c>--version</c> apart, and the form it was to build.</summary>
    public string[] Asked => File.Exists(_terminal.PathOf("asked")) ? File.ReadAllLines(_terminal.PathOf("asked")) : [];

    public Ran Run(string script, params string[] arguments) => _terminal.Other(_terminal.PathOf(script), arguments);

    public bool Has(string file) => File.Exists(_terminal.PathOf(file));

    public void Write(string file) => _terminal.Write(file, "changed");

    /// <summary>From now on dotnet "runs" one test project, of this report.</summary>
    public void Report(string report)
    {
        _terminal.Write("tests/One.Tests/One.Tests.csproj", "");
        _terminal.Write("report", report);
        _terminal.WriteProgram("bin/dotnet", $$"""
            #!/bin/bash
            while [[ $# -gt 0 ]]; do [[ $1 == --results-directory ]] && out=$2; shift; done
            [[ -z ${out:-} ]] || { mkdir -p "$out"; cat "{{_terminal.PathOf("report")}}" > "$out/one.trx"; }
            """);
    }

    public void Delete(string file) => File.Delete(_terminal.PathOf(file));

    public void Dispose() => _terminal.Dispose();

    /// <summary>Makes a file, and the folders it lies in, as old as this.</summary>
    private void Age(string file, TimeSpan age)
    {
        var then = DateTime.UtcNow - age;
        for (var path = _terminal.PathOf(file); path != _terminal.Folder; path = Path.GetDirectoryName(path)!)
        {
            if (Directory.Exists(path))
            {
                Directory.SetLastWriteTimeUtc(path, then);
            }
            else
            {
                File.SetLastWriteTimeUtc(path, then);
            }
        }
    }
}
