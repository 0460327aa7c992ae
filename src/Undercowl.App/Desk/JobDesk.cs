using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using Undercowl.App.Bench;
using Undercowl.App.Browser;
using Undercowl.Diagnosis;
using Undercowl.Jobs;

namespace Undercowl.App.Desk;

/// <summary>All the jobs of this device, and the one on the desk.</summary>
public sealed class JobDesk
{
    /// <summary>What was erased can be had back for this long.</summary>
    private static readonly TimeSpan Kept = TimeSpan.FromDays(7);

    private const string DemoSetting = "demo";

    private EntryWriter? _writer;
    private OpenJob? _open;

    /// <summary>Heads of the jobs that are not erased, the last changed first; of the erased with <paramref name="erased"/>.</summary>
    public static async Task<IReadOnlyList<JobHead>> Jobs(bool erased = false)
    {
        var all = JsonSerializer.Deserialize(await Store.Jobs(), DeskJson.Default.JobHeadArray) ?? [];
        foreach (var old in all.Where(j => j.Erased is { } at && TimeProvider.System.GetUtcNow() - at > Kept))
        {
            await Store.Erase(old.Id);
        }

        return [.. all.Where(j => j.Erased is null != erased).OrderByDescending(j => j.Changed)];
    }

    /// <summary>The job, at first perhaps no more of it than the step that is put; see <see cref="OpenJob.Ready"/>.</summary>
    public async Task<OpenJob?> Glance(string id)
    {
        if (_open is null || _open.Head.Id != id)
        {
            _open = await OpenJob.Glance(id, await Writer());
        }

        return _open;
    }

    public async Task<OpenJob?> Open(string id)
    {
        if (await Glance(id) is { } open)
        {
            await open.Ready();
        }

        return _open;
    }

    public async Task<OpenJob> Begin(string layout, string complaint, string? words, string title, IReadOnlyList<EntryBody> told)
    {
        var now = TimeProvider.System.GetUtcNow();
        var head = new JobHead("", title, "", Known.Bench.Knowledge.ComplaintOf(complaint)?.Name ?? complaint, words, now, now, "open");
        // Else the browser may throw jobs away when it wants the room.
        _ = Store.Persist();
        return _open = await OpenJob.Begin(Known.Bench.Opening(layout, complaint, words), head, told, await Writer());
    }

    /// <summary>The demonstration: the one that is there and open, or a new one.</summary>
    public async Task<OpenJob> Demo()
    {
        if (await Store.Setting(DemoSetting) is { Length: > 0 } id && await Glance(id) is { Head: { Outcome: "open", Erased: null } } there)
        {
            return there;
        }

        var start = JsonSerializer.Deserialize(Known.Resource("demo-start.json"), DeskJson.Default.DemoStart)!;
        _open = await start.Begin(Encoding.UTF8.GetString(Known.Resource("demo-answer.json")), await Writer());
        await Store.Set(DemoSetting, _open.Head.Id);
        return _open;
    }

    public static Task Put(JobHead head) => Store.Keep(JsonSerializer.Serialize(head, DeskJson.Default.JobHead));

    /// <summary>Every job's entries, one after the other: each job begins with its opening entry.</summary>
    public static async Task<string> Export(IEnumerable<JobHead> jobs)
    {
        var text = new StringBuilder();
        foreach (var job in jobs)
        {
            text.Append(await Store.Lines(job.Id));
        }

        return text.ToString();
    }

    /// <summary>
    /// Takes jobs in, one or several in one text. A job that is here already is merged: the union of both. Returns what was taken in;
    /// a line that cannot be read refuses the whole text, and nothing is changed.
    /// </summary>
    /// <exception cref="JobException">A line is damaged, or entries share an id and differ.</exception>
    /// <exception cref="DiagnosisException">There is no job in it.</exception>
    public async Task<IReadOnlyList<JobHead>> Import(string text)
    {
        var taken = new List<(JobHead Head, string Lines)>();
        foreach (var lines in JobTexts.Apart(text))
        {
            var job = Job.Parse(Encoding.UTF8.GetBytes(lines)).Whole();
            var head = JobHeads.Of(job, JobHeads.Complaint(job, Known.Bench), "");
            if (JsonSerializer.Deserialize(await Store.Head(head.Id), DeskJson.Default.JobHead) is { } here)
            {
                job = job.Merge(Job.Parse(Encoding.UTF8.GetBytes(await Store.Lines(head.Id))).Whole());
                head = JobHeads.Of(job, head.Complaint, here.Title) with { Demo = here.Demo };
            }

            taken.Add((head, Encoding.UTF8.GetString(job.ToBytes())));
        }

        foreach (var (head, lines) in taken)
        {
            await Store.Append(JsonSerializer.Serialize(head, DeskJson.Default.JobHead), lines);
        }

        _open = null;
        return taken.Count > 0 ? [.. taken.Select(t => t.Head)] : throw new DiagnosisException("There is no job in this file.", "Choose a file that was exported here or by the terminal program.");
    }

    private async Task<EntryWriter> Writer()
    {
        if (_writer is null)
        {
            var name = await Store.Setting("device");
            if (name.Length == 0)
            {
                name = $"app-{Device.DeviceName()}";
                await Store.Set("device", name);
            }

            _writer = new EntryWriter(name, TimeProvider.System, RandomNumberGenerator.Fill);
        }

        return _writer;
    }
}
