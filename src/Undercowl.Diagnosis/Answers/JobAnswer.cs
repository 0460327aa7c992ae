namespace Undercowl.Diagnosis.Answers;

/// <summary>All that a screen shows of a job while it is worked, in one document.</summary>
/// <param name="Version">Version of this document's form.</param>
/// <param name="Knowledge">Hash of the knowledge that it was worked out with.</param>
/// <param name="Entries">How many entries the job had.</param>
/// <param name="Complaint">What is complained of, in words.</param>
/// <param name="Now">The step that is put now; null when nothing is left to propose.</param>
/// <param name="Next">The proposals and what is withheld.</param>
/// <param name="Causes">The likeliest faults now, and those that were likeliest as found; consequences of others are among them and marked.</param>
/// <param name="Approximate">True when probabilities are only known within <paramref name="ErrorBound"/>, above one in a million.</param>
/// <param name="ErrorBound">No probability is further than this from the model's; 0 when exact.</param>
/// <param name="KnowledgeChanged">True when the job was opened with other knowledge than today's.</param>
/// <param name="Engine">The engine to be drawn.</param>
/// <param name="Log">The last entries in words, latest first; cautions read are left out.</param>
/// <param name="Outcome">How the job ended; <c>open</c> while it has not.</param>
public sealed record JobAnswer(
    int Version,
    string Knowledge,
    int Entries,
    string Complaint,
    ProposedStep? Now,
    NextAnswer Next,
    IReadOnlyList<CauseBelief> Causes,
    bool Approximate,
    double ErrorBound,
    bool KnowledgeChanged,
    EngineAnswer Engine,
    IReadOnlyList<ReportEntry> Log,
    string Outcome)
{
    /// <summary>As many proposals are told as a person would read.</summary>
    public const int Proposals = 8;
}
