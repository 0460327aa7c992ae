using System.Globalization;

namespace Undercowl.Diagnosis.Answers;

/// <summary>The record of a job, for the customer, the next technician and the next season.</summary>
/// <param name="Version">Version of this document's form.</param>
/// <param name="Layout">The engine layout in words.</param>
/// <param name="Complaint">What was complained of.</param>
/// <param name="Entries">The log in words, in order.</param>
/// <param name="Withdrawn">Entries taken back.</param>
/// <param name="Leading">The leading causes as found; consequences of others are not among them.</param>
/// <param name="Proof">Whether the repair is proven, and what is missing.</param>
/// <param name="Restore">What must be undone.</param>
/// <param name="Interlocks">Interlocks that are not clear.</param>
/// <param name="Notices">What the reader must know: generic specs, changed knowledge, findings without effect, interlocks passed over.</param>
/// <param name="Outcome">How the job ended; <c>open</c> while it has not.</param>
public sealed record ReportAnswer(
    int Version,
    string Layout,
    string Complaint,
    IReadOnlyList<ReportEntry> Entries,
    IReadOnlyList<ReportEntry> Withdrawn,
    IReadOnlyList<CauseBelief> Leading,
    ProofAnswer Proof,
    IReadOnlyList<RestoreAnswer> Restore,
    IReadOnlyList<string> Interlocks,
    IReadOnlyList<string> Notices,
    string Outcome);

/// <summary>One entry in words.</summary>
public sealed record ReportEntry(string Entry, string At, string Kind, string Text)
{
    /// <summary>A time as entries show it.</summary>
    public static string Time(DateTimeOffset at) => at.ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture);
}

/// <summary>Whether the job may be signed off as proven.</summary>
/// <param name="Proven">True when nothing is missing.</param>
/// <param name="HealthyNow">Probability that the complaint is gone for good, faults that come and go counted as showing.</param>
/// <param name="ErrorBound">That probability is off by no more; 0 when exact.</param>
/// <param name="Missing">What is missing, each with what to do.</param>
public sealed record ProofAnswer(bool Proven, double HealthyNow, double ErrorBound, IReadOnlyList<string> Missing);
