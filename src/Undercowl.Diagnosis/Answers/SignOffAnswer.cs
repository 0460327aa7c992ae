namespace Undercowl.Diagnosis.Answers;

/// <summary>The end of a job, or why it may not end so.</summary>
/// <param name="Version">Version of this document's form.</param>
/// <param name="Signed">True when it was recorded.</param>
/// <param name="Outcome">The ending asked for.</param>
/// <param name="HealthyNow">Probability that the complaint is gone for good.</param>
/// <param name="ErrorBound">That probability is off by no more; 0 when exact.</param>
/// <param name="Missing">When refused: each thing that is missing.</param>
/// <param name="Open">When signed otherwise than proven: what stays open.</param>
/// <param name="Restore">What must be undone before any ending.</param>
public sealed record SignOffAnswer(
    int Version, bool Signed, string Outcome, double HealthyNow, double ErrorBound, IReadOnlyList<string> Missing, IReadOnlyList<string> Open, IReadOnlyList<RestoreAnswer> Restore);
