using System.Text.Json;
using Undercowl.Cli.Documents;
using Undercowl.Diagnosis;
using Undercowl.Diagnosis.Answers;
using Undercowl.Jobs;

namespace Undercowl.Cli;

/// <summary>Tells how work on a job goes: as text, or one JSON document a line.</summary>
internal sealed class WorkTelling(Shell shell, bool json, bool echo = false)
{
    private readonly Page _page = new(shell);

    /// <summary>True once an answer was refused.</summary>
    public bool Refused { get; private set; }

    public void Step(int number, ProposedStep step, string currency)
    {
        if (json)
        {
            shell.Out.WriteLine(JsonSerializer.Serialize(new StepShown(1, "step", number, step), TerminalJson.Default.StepShown));
            return;
        }

        _page.Line();
        _page.Line(_page.Paint.Quiet($"Step {number}"));
        StepText.Write(step, currency, _page);
    }

    public void Recorded(string answer, IReadOnlyList<Entry> entries, Draft? draft = null)
    {
        var (warnings, takenWith) = draft is null ? ([], []) : (draft.Warnings, draft.TakenOver);
        if (json)
        {
            shell.Out.WriteLine(JsonSerializer.Serialize(
                new StepRecorded(1, "recorded", answer, [.. entries.Select(RecordedEntry.Of)], warnings, takenWith), TerminalJson.Default.StepRecorded));
        }
        else
        {
            if (echo)
            {
                _page.Line(_page.Paint.Good($"> {answer}"));
            }

            foreach (var entry in entries)
            {
                _page.Line($"recorded {EntryWords.Short(entry.Id)}  {EntryWords.Of(entry.Body)}");
            }

            TakenWith.Write(takenWith, "undo, then undercowl record it with", _page);
        }

        foreach (var warning in warnings)
        {
            Failure.Say(shell, warning);
        }
    }

    /// <summary>Something to read that is neither step nor entry; in JSON the step had it already.</summary>
    public void Say(Action<Page> words)
    {
        if (!json)
        {
            words(_page);
        }
    }

    public void Refuse(string message)
    {
        Refused = true;
        Failure.Say(shell, message);
    }

    public void Ended(WorkEnded ended)
    {
        if (json)
        {
            shell.Out.WriteLine(JsonSerializer.Serialize(ended, TerminalJson.Default.WorkEnded));
        }
        else
        {
            _page.Line();
            _page.Line(ended.Outcome == "open"
                ? $"The job is open after {Steps(ended.Steps)} here."
                : _page.Paint.Good($"Signed off as {ended.Outcome} after {Steps(ended.Steps)} here."));
            if (ended.Leading is { } leading)
            {
                _page.Item("As found:  ", $"{BeliefText.Percent(leading.AsFound).Trim()} {leading.Name}");
            }

            _page.Item("", $"The complaint is {BeliefText.GoneForGood(ended.HealthyNow, ended.ErrorBound)}.");
            if (ended.Job is { } path)
            {
                _page.Line($"The record: undercowl report {path}");
            }

            _page.Prevail();
        }

        shell.Out.Flush();
    }

    private static string Steps(int count) => count == 1 ? "1 step" : $"{count} steps";
}
