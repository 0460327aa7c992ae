using System.Text;
using System.Text.Json;
using Undercowl.App.Bench;
using Undercowl.App.Browser;
using Undercowl.Diagnosis;
using Undercowl.Diagnosis.Answers;
using Undercowl.Diagnosis.Working;
using Undercowl.Jobs;

namespace Undercowl.App.Desk;

/// <summary>
/// The job on the desk. What is recorded is on the disk before it is shown; the answer follows from the worker, and until it
/// is there the last one stands, marked as of before.
/// </summary>
public sealed class OpenJob
{
    private readonly EntryWriter _writer;
    private readonly List<EntryId> _done = [];
    private JobDiagnosis? _diagnosis;
    private string _lines;
    private string _answeredFor = "";

    private OpenJob(JobHead head, Job job, string lines, LeftSteps left, EntryWriter writer) => (Head, Job, _lines, Left, _writer) = (head, job, lines, left, writer);

    /// <summary>Raised when anything that is shown has changed.</summary>
    public event Action? Changed;

    public JobHead Head { get; private set; }

    public Job Job { get; private set; }

    /// <summary>The last answer; null until there is one.</summary>
    public JobAnswer? Answer { get; private set; }

    /// <summary>True while the answer is of before what was last recorded.</summary>
    public bool Stale => Answer is null || _answeredFor != Key;

    /// <summary>Why there is no newer answer; null when nothing went wrong.</summary>
    public string? Trouble { get; private set; }

    public LeftSteps Left { get; }

    /// <summary>The job laid over today's knowledge, to draft entries with. The belief is the worker's.</summary>
    public JobDiagnosis Diagnosis => _diagnosis ??= Known.Bench.Open(Job);

    public bool MayUndo => _done.Count > 0;

    /// <summary>The log as text, for export.</summary>
    public string Lines => _lines;

    // That cautions were read changes no belief and no proposal.
    private string Key
    {
        get
        {
            var telling = Job.Entries.Where(e => e.Body is not CautionAcknowledged).ToArray();
            return $"{Known.Edition} {telling.Length} {(telling.Length > 0 ? telling[^1].Id : "")} {Left.Text.Replace('\n', '|')}";
        }
    }

    /// <summary>The job from the store, with the answer that was kept; null when there is no such job.</summary>
    public static async Task<OpenJob?> Load(string id, EntryWriter writer)
    {
        if (JsonSerializer.Deserialize(await Store.Head(id), DeskJson.Default.JobHead) is not { } head)
        {
            return null;
        }

        var lines = await Store.Lines(id);
        var open = new OpenJob(head, Job.Parse(Encoding.UTF8.GetBytes(lines), head.Title).Job, lines, LeftSteps.Parse(await Store.Setting($"left {id}")), writer);
        var kept = await Store.Answer(id);
        if (kept.IndexOf('\n', StringComparison.Ordinal) is > 0 and var end)
        {
            open.Take(kept[..end], kept[(end + 1)..]);
        }

        return open;
    }

    /// <summary>A new job; it is on the disk when this returns.</summary>
    public static async Task<OpenJob> Begin(Opened opening, string title, EntryWriter writer, bool demo = false)
    {
        var entry = writer.Next(Job.Empty, opening);
        var job = Job.Empty.With(entry);
        var open = new OpenJob(JobHeads.Of(job, Known.Bench, title) with { Demo = demo }, Job.Empty, "", LeftSteps.Parse(""), writer);
        await open.Keep([entry]);
        return open;
    }

    /// <summary>Records entries; when this returns they are on the disk. Throws when they could not be kept, and then nothing has changed.</summary>
    public async Task Record(Draft draft)
    {
        var entries = new List<Entry>();
        var job = Job;
        foreach (var body in draft.Bodies)
        {
            var said = body is Finding { Occasion: "" } finding ? finding with { Occasion = entries[^1].Id.ToString() } : body;
            entries.Add(_writer.Next(job, said));
            job = job.With(entries[^1]);
        }

        await Keep(entries);
        if (entries.Count > 0 && entries[^1].Body is not CautionAcknowledged)
        {
            _done.Add(entries[^1].Id);
        }

        _ = Refresh();
    }

    /// <summary>Takes the last thing back that was recorded here.</summary>
    public async Task Undo()
    {
        if (_done.Count > 0)
        {
            var last = _done[^1];
            _done.RemoveAt(_done.Count - 1);
            await Withdraw(last, "taken back at once");
        }
    }

    public async Task Withdraw(EntryId entry, string why)
    {
        await Keep([_writer.Next(Job, new Withdrawn(entry, why))]);
        _ = Refresh();
    }

    /// <summary>Leaves a step for now; it is not put again until the others are through or all are asked for again.</summary>
    public async Task Leave(ProposedStep step)
    {
        Left.Add(step);
        await Store.Set($"left {Head.Id}", Left.Text);
        _ = Refresh();
    }

    public async Task TakeUpAgain()
    {
        Left.Clear();
        await Store.Set($"left {Head.Id}", "");
        _ = Refresh();
    }

    /// <summary>Asks the worker for the answer to the job as it is now, unless that is known.</summary>
    public async Task Refresh()
    {
        Changed?.Invoke();
        var key = Key;
        if (Answer is not null && _answeredFor == key)
        {
            return;
        }

        try
        {
            var text = await BenchWorker.Ask("answer", _lines, Left.Text);
            if (text.Length > 0 && key == Key)
            {
                Trouble = null;
                Take(key, text);
                Changed?.Invoke();
                await Store.KeepAnswer(Head.Id, key, text);
            }
        }
        catch (Exception error) when (error is System.Runtime.InteropServices.JavaScript.JSException or JsonException)
        {
            Trouble = error.Message;
            Changed?.Invoke();
        }
    }

    /// <summary>Another answer document about the job as it is.</summary>
    public Task<string> Ask(string kind, string argument = "") => BenchWorker.Ask(kind, _lines, argument);

    public async Task Rename(JobHead head)
    {
        Head = head;
        await Store.Keep(JsonSerializer.Serialize(head, DeskJson.Default.JobHead));
        Changed?.Invoke();
    }

    private async Task Keep(IReadOnlyList<Entry> entries)
    {
        var job = entries.Aggregate(Job, (j, e) => j.With(e));
        var head = JobHeads.Of(job, Known.Bench, Head.Title) with { Archived = Head.Archived, Demo = Head.Demo };
        var lines = string.Concat(entries.Select(e => Encoding.UTF8.GetString(e.Line.Span) + "\n"));
        await Store.Append(JsonSerializer.Serialize(head, DeskJson.Default.JobHead), lines);
        (Job, Head, _diagnosis) = (job, head, null);
        _lines += lines;
        Read();
    }

    private void Take(string key, string text)
    {
        (_answeredFor, Answer) = (key, JsonSerializer.Deserialize(text, AnswerJson.Default.JobAnswer));
        Read();
    }

    /// <summary>Marks the cautions of the step that were read since the answer was made.</summary>
    private void Read()
    {
        if (Answer is { Now: { } now } answer && now.Cautions.Any(c => !c.Acknowledged))
        {
            var projection = Projection.Of(Job);
            Answer = answer with { Now = now with { Cautions = [.. now.Cautions.Select(c => c with { Acknowledged = c.Acknowledged || StepReply.WasRead(projection, c.Id, now.SetUp) })] } };
        }
    }
}
