using System.Globalization;
using Undercowl.Cli.Documents;
using Undercowl.Diagnosis;
using Undercowl.Diagnosis.Working;
using Undercowl.Jobs;
using ProposedStep = Undercowl.Diagnosis.Answers.ProposedStep;

namespace Undercowl.Cli;

/// <summary>
/// Works a job step by step: puts the best step, takes the answer, records it, until sign-off or until there are no more
/// answers. The terminal and the demonstration both go through here.
/// </summary>
internal sealed class Work(JobAtHand job, IAnswers answers, WorkTelling telling, int limit = int.MaxValue)
{
    private readonly WorkSteps _steps = new();
    private readonly Stack<EntryId> _done = [];
    private int _number;

    public WorkEnded Run()
    {
        while (job.Diagnosis.Projection.Ending is null && _number < limit)
        {
            if (_steps.Next(job.Diagnosis) is not { } step)
            {
                telling.Say(page => page.Line("Nothing is left to propose here. See: undercowl next, undercowl sign-off."));
                break;
            }

            telling.Step(++_number, step, _steps.Currency);
            if (!Put(step))
            {
                break;
            }
        }

        var diagnosis = job.Diagnosis;
        var outcome = diagnosis.Projection.Ending is { } ended ? Outcomes.Text(ended.Body.Outcome) : "open";
        var leading = diagnosis.BeliefNow().Causes.Where(c => !c.Consequence).MaxBy(c => c.AsFound);
        var proof = diagnosis.Proof();
        return new WorkEnded(1, "ended", outcome, _number, proof.HealthyNow, proof.ErrorBound, leading, null);
    }

    /// <summary>Puts one step until it is answered or left; false when the work is to stop.</summary>
    private bool Put(ProposedStep step)
    {
        while (true)
        {
            var pending = step.Cautions.Any(c => !c.Acknowledged);
            if (answers.Answer(step, pending, job.Diagnosis) is not { } answer || answer is "quit")
            {
                return false;
            }

            try
            {
                if (pending && answer is "ok" or "yes" or "understood")
                {
                    Acknowledge(step, answer);
                    step = step with { Cautions = [.. step.Cautions.Select(c => c with { Acknowledged = true })] };
                }
                else if (Aside(step, answer) is { } left)
                {
                    if (left)
                    {
                        return true;
                    }
                }
                else if (pending)
                {
                    throw new Refusal("The cautions of this step are not acknowledged.", "Read them and type ok; or skip, other, why, quit.");
                }
                else
                {
                    Take(step, answer);
                    return true;
                }
            }
            catch (Exception error) when (error is DiagnosisException or JobException or Refusal)
            {
                telling.Refuse(error.Message);
                if (answers.StopsWhenRefused)
                {
                    return false;
                }
            }
        }
    }

    /// <summary>What is no answer to the step: true when the step is left, false when it stands, null when it is an answer after all.</summary>
    private bool? Aside(ProposedStep step, string answer)
    {
        var (word, rest) = Split(answer);
        switch (word)
        {
            case "skip":
                _steps.Skip(step);
                return true;
            case "why":
                telling.Say(page =>
                {
                    page.Item("  ", step.Why);
                    BeliefText.Write(job.Diagnosis.BeliefNow(), 5, page);
                });
                return false;
            case "other" when rest.Length == 0:
                telling.Say(page =>
                {
                    foreach (var (i, open) in _steps.Open.Index())
                    {
                        page.Item($"  {i + 1}. ", $"{open.Name} ({StepText.Cost(open, _steps.Currency)})");
                    }

                    page.Line("Type other N to take one of them.");
                });
                return false;
            case "other":
                _steps.Choose(int.TryParse(rest, NumberStyles.None, CultureInfo.InvariantCulture, out var n) && n >= 1 && n <= _steps.Open.Count
                    ? _steps.Open[n - 1]
                    : throw new Refusal($"There is no other step {rest}.", $"Type other and a number from 1 to {_steps.Open.Count}."));
                return true;
            case "restore":
                Record(answer, Restoring.Draft(job.Diagnosis, rest.Length == 0 ? null : rest));
                return true;
            case "note" when rest.Length > 0:
                Record(answer, new Draft([new Note(rest)], []));
                return false;
            case "undo":
                var last = _done.Count > 0 ? _done.Pop() : throw new Refusal("Nothing was recorded here yet.", "Take older entries back with undercowl withdraw.");
                telling.Recorded(answer, job.Record(new Withdrawn(last, "taken back while working")));
                return true;
            case "help" or "?":
                telling.Say(page => page.Item("  ", "An answer to the step, or: ok (cautions read), skip, other, other N, why, restore, note TEXT, undo, quit. A check that cannot be done: not-done: why. A remedy: done, or declined: why."));
                return false;
            default:
                return null;
        }
    }

    private void Take(ProposedStep step, string answer)
    {
        var (word, rest) = Split(answer);
        switch (step.Kind)
        {
            case "refer":
                End(answer, word == "refer" && rest.Length > 0 ? JobOutcome.Referred : throw new Refusal("Handing the job on ends it.", "Type refer and who signs, or skip, or other."), rest);
                break;
            case "sign-off":
                End(answer, word == "sign" && rest.Length > 0 ? JobOutcome.Proven : throw new Refusal("Signing off ends the job.", "Type sign and who signs."), rest);
                break;
            default:
                Record(answer, StepReply.Draft(job.Diagnosis, step, answer));
                if (answer.StartsWith("not-done", StringComparison.Ordinal))
                {
                    _steps.Skip(step);
                }

                break;
        }
    }

    private void End(string answer, JobOutcome outcome, string by)
    {
        var ending = Ending.Of(job, outcome, by);
        if (!ending.Signed)
        {
            throw new Refusal($"Not signed off as {ending.Outcome}.", string.Join(" ", ending.Missing));
        }

        telling.Recorded(answer, [job.Job.Entries[^1]]);
    }

    private void Acknowledge(ProposedStep step, string answer) => telling.Recorded(answer, job.Record(StepReply.Acknowledge(job.Diagnosis, step).Bodies));

    private void Record(string answer, Draft draft)
    {
        var entries = job.Record(draft.Bodies);
        _done.Push(entries[^1].Id);
        telling.Recorded(answer, entries, draft);
    }

    private static (string Word, string Tail) Split(string answer)
    {
        var end = answer.AsSpan().IndexOfAny(' ', ':');
        return end < 0 ? (answer, "") : (answer[..end], answer[(end + 1)..].TrimStart(' ', ':'));
    }
}
