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

    /// <summary>One deed at a time: the entries of two taps in a row follow each other.</summary>
    private Task _turn = Task.CompletedTask;
    private JobDiagnosis? _diagnosis;
    private string _lines = "";
    private string _answeredFor = "";
    private string _kept = "";
    private Task? _ready;

    private OpenJob(JobHead head, LeftSteps left, EntryWriter writer) => (Head, Left, _writer) = (head, left, writer);

    /// <summary>Raised when anything that is shown has changed.</summary>
    public event Action? Changed;

    public JobHead Head { get; private set; }

    /// <summary>The entries; none before <see cref="Ready"/> has ended.</summary>
    public Job Job { get; private set; } = Job.Empty;

    /// <summary>The last answer; null until there is one.</summary>
    public JobAnswer? Answer { get; private set; }

    /// <summary>The step that is put, as soon as it is known: of a job that was just opened, before the rest of the answer.</summary>
    public StepShown? Step { get; private set; }

    /// <summary>True while the answer is of before what was last recorded.</summary>
    public bool Stale => Step is null || _answeredFor != Key;

    /// <summary>Why there is no newer answer; null when nothing went wrong.</summary>
    public string? Trouble { get; private set; }

    public LeftSteps Left { get; }

    /// <summary>The job laid over today's knowledge, to draft entries with. The belief is the worker's.</summary>
    public JobDiagnosis Diagnosis => _diagnosis ??= Known.Bench.Open(Job);

    public bool MayUndo => _done.Count > 0;

    private string Key => $"{Known.Edition} {Head.Telling} {Left.Text.Replace('\n', '|')}";

    /// <summary>
    /// The head of a job and the step that was put last, which is little and soon there; null when there is no such job. The rest is there when
    /// <see cref="Ready"/> has ended.
    /// </summary>
    public static async Task<OpenJob?> Glance(string id, EntryWriter writer)
    {
        if (JsonSerializer.Deserialize(await Store.Head(id), DeskJson.Default.JobHead) is not { } head)
        {
            return null;
        }

        var open = new OpenJob(head, LeftSteps.Parse(await Store.Setting($"left {id}")), writer);
        // Three lines: what it is for, the step, the whole answer.
        var kept = (await Store.Answer(id)).Split('\n', 3);
        if (kept.Length == 3)
        {
            (open._answeredFor, open._kept) = (kept[0], kept[2]);
            open.Step = JsonSerializer.Deserialize(kept[1], DeskJson.Default.StepShown);
        }

        return open;
    }

    /// <summary>A new job; it is on the disk when this returns.</summary>
    /// <param name="opening">How it begins.</param>
    /// <param name="head">Its title, layout and complaint in words.</param>
    /// <param name="told">What was heard to begin with.</param>
    /// <param name="writer">Makes the entries.</param>
    public static async Task<OpenJob> Begin(Opened opening, JobHead head, IReadOnlyList<EntryBody> told, EntryWriter writer)
    {
        var open = new OpenJob(head, LeftSteps.Parse(""), writer);
        await open.Keep([opening, .. told]);
        return open;
    }

    /// <summary>Gives a job that has just begun an answer that was worked out beforehand for one that begins like it.</summary>
    /// <param name="step">A <see cref="StepShown"/>.</param>
    /// <param name="answer">The answer document.</param>
    public async Task Give(string step, string answer)
    {
        (_answeredFor, _kept, Step) = (Key, answer, JsonSerializer.Deserialize(step, DeskJson.Default.StepShown));
        await Store.KeepAnswer(Head.Id, Key, $"{step}\n{answer}");
    }

    /// <summary>When the entries and the whole of the last answer are there.</summary>
    public Task Ready() => _ready ??= Load();

    private async Task Load()
    {
        await Task.Yield();
        if (Job.Count == 0)
        {
            _lines = await Store.Lines(Head.Id);
            Job = Job.Parse(Encoding.UTF8.GetBytes(_lines), Head.Title).Job;
        }

        if (_kept.Length > 0)
        {
            Take(_answeredFor, _kept);
            _kept = "";
        }

        Changed?.Invoke();
    }

    /// <summary>Records entries; when this returns they are on the disk. Throws when they could not be kept, and then nothing has changed.</summary>
    public async Task Record(Draft draft)
    {
        await Ready();
        var entries = await Keep(draft.Bodies);
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
        await Ready();
        await Keep([new Withdrawn(entry, why)]);
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

    private List<Entry> Entries(IReadOnlyList<EntryBody> bodies)
    {
        var entries = new List<Entry>();
        var job = Job;
        foreach (var body in bodies)
        {
            var said = body is Finding { Occasion: "" } finding ? finding with { Occasion = entries[^1].Id.ToString() } : body;
            entries.Add(_writer.Next(job, said));
            job = job.With(entries[^1]);
        }

        return entries;
    }

    /// <summary>Asks the worker for the answer to the job as it is now, unless that is known.</summary>
    public async Task Refresh()
    {
        await Ready();
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
                await KeepAnswer(key, text);
            }
        }
        catch (Exception error) when (error is System.Runtime.InteropServices.JavaScript.JSException or JsonException)
        {
            Trouble = error.Message;
            Changed?.Invoke();
        }
    }

    /// <summary>Another answer document about the job as it is.</summary>
    public async Task<string> Ask(string kind, string argument = "")
    {
        await Ready();
        return await BenchWorker.Ask(kind, _lines, argument);
    }

    private Task<List<Entry>> Keep(IReadOnlyList<EntryBody> bodies)
    {
        var kept = KeepAfter(_turn, bodies);
        _turn = kept;
        return kept;
    }

    private async Task<List<Entry>> KeepAfter(Task before, IReadOnlyList<EntryBody> bodies)
    {
        // Whether it went well is told to whoever did it.
        await Task.WhenAny(before);
        var entries = Entries(bodies);
        var job = entries.Aggregate(Job, (j, e) => j.With(e));
        var head = JobHeads.Of(job, Head.Complaint, Head.Title) with { Archived = Head.Archived, Demo = Head.Demo };
        var lines = string.Concat(entries.Select(e => Encoding.UTF8.GetString(e.Line.Span) + "\n"));
        await Store.Append(JsonSerializer.Serialize(head, DeskJson.Default.JobHead), lines);
        (Job, Head, _diagnosis) = (job, head, null);
        _lines += lines;
        Read();
        return entries;
    }

    private void Take(string key, string text)
    {
        (_answeredFor, Answer) = (key, JsonSerializer.Deserialize(text, AnswerJson.Default.JobAnswer));
        Read();
    }

    /// <summary>Drops the answer, and asks for another.</summary>
    public Task Forget()
    {
        (Answer, Step, _answeredFor) = (null, null, "");
        return Refresh();
    }

    private Task KeepAnswer(string key, string text) =>
        Store.KeepAnswer(Head.Id, key, $"{JsonSerializer.Serialize(new StepShown(Answer!.Now, Answer.Next.Currency), DeskJson.Default.StepShown)}\n{text}");

    /// <summary>Marks the cautions of the step that were read since the answer was made.</summary>
    private void Read()
    {
        if (Answer is not { } answer)
        {
            return;
        }

        if (answer.Now is { } now && now.Cautions.Any(c => !c.Acknowledged))
        {
            var projection = Projection.Of(Job);
            Answer = answer with { Now = now with { Cautions = [.. now.Cautions.Select(c => c with { Acknowledged = c.Acknowledged || StepReply.WasRead(projection, c.Id, now.SetUp) })] } };
        }

        Step = new StepShown(Answer.Now, Answer.Next.Currency);
    }
}
