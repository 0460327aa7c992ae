using Undercowl.Inference;

namespace Undercowl.Diagnosis.Answers;

/// <summary>Why a cause is believed as it is: the weight of each finding, in decibans (ten times the common logarithm of the odds ratio).</summary>
/// <param name="Version">Version of this document's form.</param>
/// <param name="Cause">The cause's id.</param>
/// <param name="Name">In words.</param>
/// <param name="PriorDecibans">Before anything was heard; <see cref="Most"/> either way mean that or more.</param>
/// <param name="PosteriorDecibans">As found, after everything; <see cref="Most"/> either way mean that or more.</param>
/// <param name="AsFound">The same as a probability.</param>
/// <param name="ErrorBound">No probability that went into these is off by more; 0 when exact. A small probability's decibans mean little then.</param>
/// <param name="Weights">In the order of the log. The stepwise weights add up to the difference; the leave-one-out ones do not.</param>
/// <param name="Saying">The same in sentences, what told most first.</param>
public sealed record WhyAnswer(
    int Version,
    string Cause,
    string Name,
    double PriorDecibans,
    double PosteriorDecibans,
    double AsFound,
    double ErrorBound,
    IReadOnlyList<WeightAnswer> Weights,
    IReadOnlyList<string> Saying)
{
    /// <summary>Odds are told to so many decibans either way.</summary>
    public const double Most = WeightsOfEvidence.Most;
}

/// <summary>One finding's weight for a cause.</summary>
/// <param name="Entry">The finding's entry, or <c>complaint</c>.</param>
/// <param name="What">The finding in words.</param>
/// <param name="Stepwise">Decibans added when it came, given all before it.</param>
/// <param name="LeaveOneOut">Decibans that would be lost without it, given all others.</param>
/// <param name="StepwiseAtLeast">True when it is that or more, because the odds before or after are beyond what is told.</param>
/// <param name="LeaveOneOutAtLeast">The same for what would be lost.</param>
public sealed record WeightAnswer(string Entry, string What, double Stepwise, double LeaveOneOut, bool StepwiseAtLeast, bool LeaveOneOutAtLeast);
