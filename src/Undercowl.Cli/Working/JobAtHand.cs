using Undercowl.Diagnosis;
using Undercowl.Jobs;
using Undercowl.Knowledge.Checking;

namespace Undercowl.Cli;

/// <summary>A job file as a command has it: read without a lock, or open for writing until disposed.</summary>
internal sealed class JobAtHand : IDisposable
{
    private readonly Shell _shell;
    private readonly JobFile? _file;
    private readonly EntryWriter? _writer;
    private readonly Job? _read;
    private readonly HashSet<EntryId> _told = [];
    private (Job Job, JobDiagnosis Diagnosis)? _diagnosed;

    private JobAtHand(Shell shell, string path, JobFile file)
    {
        (_shell, Path, _file) = (shell, path, file);
        _writer = new EntryWriter(shell.Device, shell.Clock, shell.Random);
        Notice([.. file.Mended, .. file.Notices]);
    }

    private JobAtHand(Shell shell, string path, JobReading reading)
    {
        (_shell, Path, _read) = (shell, path, reading.Whole());
        Notice(reading.Notices);
        if (reading.TornAt is not null)
        {
            Failure.Say(shell, $"{System.IO.Path.GetFileName(path)}: the last line is unfinished and is left out. It is moved aside when something is next recorded.");
        }
    }

    public string Path { get; }

    public Job Job => _file?.Job ?? _read!;

    /// <summary>The job diagnosed as it is now; worked out once until something is recorded.</summary>
    public JobDiagnosis Diagnosis
    {
        get
        {
            if (_diagnosed is not { } known || !ReferenceEquals(known.Job, Job))
            {
                _diagnosed = known = (Job, _shell.Knowledge.Bench.Open(Job));
                Tell(known.Diagnosis.WithoutEffect);
            }

            return known.Diagnosis;
        }
    }

    public static JobAtHand Read(Shell shell, string path)
    {
        RequireThere(path);
        return new JobAtHand(shell, path, JobFile.Read(path));
    }

    public static JobAtHand Write(Shell shell, string path)
    {
        RequireThere(path);
        return new JobAtHand(shell, path, JobFile.Open(path));
    }

    /// <summary>Makes a new job file. Refuses to touch one that holds entries.</summary>
    public static JobAtHand Create(Shell shell, string path)
    {
        var job = new JobAtHand(shell, path, JobFile.Open(path));
        if (job.Job.Count == 0)
        {
            return job;
        }

        job.Dispose();
        throw new Refusal($"{path} already holds a job.", $"Choose another name, or go on with it: undercowl next {path}");
    }

    /// <summary>
    /// Records bodies in order. Ctrl-C waits until all of them are on the disk, so that no reading is left without what
    /// belongs before it.
    /// </summary>
    public IReadOnlyList<Entry> Record(params IReadOnlyList<EntryBody> bodies)
    {
        using var whole = new Uninterrupted();
        var entries = new List<Entry>();
        foreach (var body in bodies)
        {
            var filled = body is Finding { Occasion: "" } finding ? finding with { Occasion = entries[^1].Id.ToString() } : body;
            entries.Add(_file!.Record(_writer!, filled));
        }

        return entries;
    }

    public void MergeIn(Job other)
    {
        using var whole = new Uninterrupted();
        _file!.MergeIn(other);
    }

    public void Dispose() => _file?.Dispose();

    private static void RequireThere(string path)
    {
        if (File.Exists(path))
        {
            return;
        }

        var folder = System.IO.Path.GetDirectoryName(System.IO.Path.GetFullPath(path))!;
        var name = System.IO.Path.GetFileName(path);
        var near = Directory.Exists(folder)
            ? Directory.EnumerateFiles(folder).Select(f => System.IO.Path.GetFileName(f)!).Where(f => !f.EndsWith(".lock", StringComparison.Ordinal))
                .Select(f => (Name: f, Distance: NearNames.Distance(name, f))).Where(f => f.Distance <= Math.Max(2, name.Length / 3)).OrderBy(f => f.Distance).FirstOrDefault().Name
            : null;
        throw new Refusal($"There is no job {path}.", near is null ? $"Begin one: undercowl start {path} --layout LAYOUT --complaint COMPLAINT" : $"Did you mean {near}?");
    }

    /// <summary>Says once of each finding that it counts for nothing, and on which line it stands.</summary>
    private void Tell(IReadOnlyList<IdleFinding> idle)
    {
        if (idle.All(i => _told.Contains(i.Id)))
        {
            return;
        }

        var lines = File.ReadLines(Path).ToArray();
        foreach (var finding in idle.Where(i => _told.Add(i.Id)))
        {
            var line = 1 + Array.FindIndex(lines, l => l.Contains($"\"id\":\"{finding.Id}\"", StringComparison.Ordinal));
            Failure.Say(_shell, $"{System.IO.Path.GetFileName(Path)}, line {line}: {finding.Check} at {finding.Place} ({EntryWords.Short(finding.Id)}) has no effect. {finding.Why} Withdraw it, and record what was read.");
        }
    }

    private void Notice(IReadOnlyList<JobProblem> problems)
    {
        foreach (var problem in problems)
        {
            Failure.Say(_shell, problem.ToString());
        }
    }
}
