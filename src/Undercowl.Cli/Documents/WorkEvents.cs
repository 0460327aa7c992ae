using Undercowl.Diagnosis;
using Undercowl.Diagnosis.Answers;

namespace Undercowl.Cli.Documents;

/// <summary>While working: the step that is put to the technician.</summary>
internal sealed record StepShown(int Version, string Event, int Number, ProposedStep Step);

/// <summary>While working: what was answered, the entries that came of it, and unusual states that a reading took over from how the engine stands.</summary>
internal sealed record StepRecorded(int Version, string Event, string Answer, IReadOnlyList<RecordedEntry> Entries, IReadOnlyList<string> Warnings, IReadOnlyList<TakenState> TakenWith);

/// <summary>The last line of <c>work</c> and <c>demo</c>: how the job stands when the work stops.</summary>
/// <param name="Version">Version of this document's form.</param>
/// <param name="Event"><c>ended</c>.</param>
/// <param name="Outcome">How the job ended; <c>open</c> when it has not.</param>
/// <param name="Steps">Steps answered.</param>
/// <param name="HealthyNow">Probability that the complaint is gone for good.</param>
/// <param name="ErrorBound">That probability is off by no more; 0 when exact.</param>
/// <param name="Leading">The leading cause as found.</param>
/// <param name="Job">The job's file, when it was kept.</param>
internal sealed record WorkEnded(int Version, string Event, string Outcome, int Steps, double HealthyNow, double ErrorBound, CauseBelief? Leading, string? Job);
