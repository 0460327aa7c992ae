using Undercowl.Diagnosis;
using Undercowl.Diagnosis.Answers;
using Undercowl.Jobs;

namespace Undercowl.Cli.Demonstrating;

/// <summary>
/// The technician of the demonstration: does what is put, and reads what the invented engine gives. It looks up each
/// step as it comes, so the order of the steps is the planner's alone.
/// </summary>
internal sealed class DemoAnswers(DemoScript script) : IAnswers
{
    public bool StopsWhenRefused => true;

    public string? Answer(ProposedStep step, bool cautions, JobDiagnosis diagnosis) => (cautions, step.Kind) switch
    {
        (true, _) => "ok",
        (_, "remedy" or "restore" or "set-up") => "done",
        (_, "make-safe") => "all",
        (_, "sign-off") => $"sign {script.SignedBy}",
        (_, "refer") => "skip",
        _ => Reading(step, Mended(diagnosis.Projection)) ?? "skip",
    };

    public string? Reading(ProposedStep step, bool mended) => script.Answers.FirstOrDefault(rule =>
        rule.Checks.Contains(step.Id)
        && (rule.At is null || rule.At.Contains(step.Place))
        && (rule.Mended is null || rule.Mended == mended)
        && (rule.SetUp is null || rule.SetUp.All(p => step.SetUp.GetValueOrDefault(p.Key) == p.Value)))?.Reading;

    private bool Mended(Projection projection) => projection.All<Remedy>().Any(done =>
        script.Mends.Any(m => m.Remedy == done.Body.Action && (m.At is null || m.At == done.Body.Place.Text)));
}
