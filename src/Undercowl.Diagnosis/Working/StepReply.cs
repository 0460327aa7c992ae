using Undercowl.Diagnosis.Answers;
using Undercowl.Jobs;

namespace Undercowl.Diagnosis.Working;

/// <summary>What is recorded when a step that was put is answered. Signing off and handing on are <see cref="SigningOff"/>.</summary>
public static class StepReply
{
    /// <summary>The answer that a remedy, a state to be brought about or putting back was done.</summary>
    public const string Done = "done";

    /// <param name="diagnosis">The job as it is.</param>
    /// <param name="step">The step as it was put.</param>
    /// <param name="answer">As typed: a reading for a check; <c>done</c> or <c>declined: why</c> for a remedy, <c>done</c> for a state to be brought about; conditions, or <c>all</c>, to make safe.</param>
    /// <exception cref="DiagnosisException">The answer does not fit the step.</exception>
    public static Draft Draft(JobDiagnosis diagnosis, ProposedStep step, string answer)
    {
        ArgumentNullException.ThrowIfNull(diagnosis);
        ArgumentNullException.ThrowIfNull(step);
        ArgumentNullException.ThrowIfNull(answer);
        return step.Kind switch
        {
            "remedy" => Remedy(diagnosis, step, answer),
            "set-up" => answer == Done ? Drafting.SetUp(diagnosis, step.SetUp) : throw new DiagnosisException($"\"{answer}\" does not say that it is so.", "Type done when it is."),
            "make-safe" => MakeSafe(diagnosis, step, answer),
            "restore" => answer == Done ? Restoring.Draft(diagnosis, Restoring.All) : throw new DiagnosisException($"\"{answer}\" does not say that it is back.", "Type done when all of it is put back."),
            "refer" or "sign-off" => throw new DiagnosisException($"\"{step.Name}\" ends the job.", "Say who signs."),
            _ => Drafting.Finding(diagnosis, new SaidFinding(step.Id, answer, step.Place) { With = step.With, SetUp = step.Said.Count > 0 ? step.Said : null }),
        };
    }

    /// <summary>
    /// That the cautions of a step were read. Holds for the whole-engine part of the set-up: the next cylinder in the same state
    /// does not ask again.
    /// </summary>
    public static Draft Acknowledge(JobDiagnosis diagnosis, ProposedStep step)
    {
        ArgumentNullException.ThrowIfNull(diagnosis);
        ArgumentNullException.ThrowIfNull(step);
        var keys = diagnosis.Knowledge.SetUps.Select(k => k.Id).ToHashSet();
        var setUp = step.SetUp.Where(p => keys.Contains(p.Key)).ToDictionary(p => p.Key, p => p.Value);
        return new Draft([.. step.Cautions.Where(c => !c.Acknowledged).Select(c => new CautionAcknowledged(c.Id, setUp.Count > 0 ? setUp : null))], []);
    }

    /// <summary>True when a caution was read in this job, for a step in this set-up.</summary>
    /// <param name="projection">The job.</param>
    /// <param name="caution">The caution by id.</param>
    /// <param name="setUp">The step's set-up; null for a step without one.</param>
    public static bool WasRead(Projection projection, string caution, IReadOnlyDictionary<string, string>? setUp)
    {
        ArgumentNullException.ThrowIfNull(projection);
        return projection.All<CautionAcknowledged>().Any(a =>
            a.Body.Caution == caution && (a.Body.SetUp is not { } read || setUp is null || read.All(pair => setUp.GetValueOrDefault(pair.Key) == pair.Value)));
    }

    private static Draft Remedy(JobDiagnosis diagnosis, ProposedStep step, string answer)
    {
        var end = answer.AsSpan().IndexOfAny(' ', ':');
        var (word, rest) = end < 0 ? (answer, "") : (answer[..end], answer[(end + 1)..].TrimStart(' ', ':'));
        return word switch
        {
            Done => Drafting.Remedy(diagnosis, step.Id, step.Place),
            "declined" => new Draft([new Declined(step.Id, rest.Length > 0 ? rest : "no reason given", Place.Parse(step.Place))], []),
            _ => throw new DiagnosisException($"\"{answer}\" does not answer a remedy.", "Type done, or declined: why."),
        };
    }

    private static Draft MakeSafe(JobDiagnosis diagnosis, ProposedStep step, string answer)
    {
        var rule = diagnosis.Interlocks.First(i => i.Interlock.Id == step.Id);
        string[] wanted = [.. (rule.Missing.Count > 0 ? rule.Missing : rule.Interlock.Lift).Select(m => m.Id)];
        string[] met = answer == "all" ? wanted : answer.Split([',', ' '], StringSplitOptions.RemoveEmptyEntries);
        return met.FirstOrDefault(m => !wanted.Contains(m)) is { } strange
            ? throw new DiagnosisException($"\"{strange}\" is not wanted here.", Near.Mend(strange, wanted.Append("all")))
            : new Draft([.. met.Select(m => new Interlock(m, "met"))], []);
    }
}
