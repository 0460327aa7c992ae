namespace Undercowl.Diagnosis.Answers;

/// <summary>What is believed of every part, as the engine came in and as it is now. Most probable cause first.</summary>
/// <param name="Version">Version of this document's form.</param>
/// <param name="Approximate">True when probabilities are only known within <paramref name="ErrorBound"/>, above one in a million.</param>
/// <param name="ErrorBound">No probability is further than this from the model's; 0 when exact.</param>
/// <param name="KnowledgeChanged">True when the job was opened with other knowledge than today's, which the belief uses.</param>
/// <param name="Causes">Faults, by probability now, then as found.</param>
/// <param name="Explanations">Joint explanations of the engine as it came in, most probable first.</param>
/// <param name="Coverage">The probability that one of the explanations listed is the right one.</param>
/// <param name="Considered">How many aspects the explanations tell apart; the rest is summed out.</param>
/// <param name="CommonCauses">What may have befallen the engine and hit several parts at once; most probable first.</param>
/// <param name="Conflict">How well the findings go together; absent where only a bound on the belief can be had.</param>
/// <param name="WithoutEffect">Findings that name what today's knowledge does not know, and what that is: kept, shown, without effect.</param>
/// <param name="LeftOut">What this answer does not tell in full, and why.</param>
public sealed record BeliefAnswer(
    int Version,
    bool Approximate,
    double ErrorBound,
    bool KnowledgeChanged,
    IReadOnlyList<CauseBelief> Causes,
    IReadOnlyList<JointExplanation> Explanations,
    double Coverage,
    int Considered,
    IReadOnlyList<CommonCauseBelief> CommonCauses,
    ConflictAnswer? Conflict,
    IReadOnlyList<string> WithoutEffect,
    IReadOnlyList<string> LeftOut);

/// <summary>One cause. Probabilities are 0 to 1.</summary>
/// <param name="Cause">Id, <c>kind@place[/output].aspect=condition</c>.</param>
/// <param name="Part">The part kind.</param>
/// <param name="Place">Where the part sat when the engine came in.</param>
/// <param name="Output">The output or cylinder of a part that serves several; null for the whole part.</param>
/// <param name="Aspect">In which respect.</param>
/// <param name="Condition">The fault.</param>
/// <param name="Name">The cause in words.</param>
/// <param name="AsFound">Belief about the engine that came in.</param>
/// <param name="Now">Belief about the engine after the remedies.</param>
/// <param name="Prior">What was believed before anything was heard.</param>
/// <param name="Consequence">True when the condition is mostly the effect of something else.</param>
/// <param name="Warning">What it does to the engine if left alone.</param>
public sealed record CauseBelief(
    string Cause,
    string Part,
    string Place,
    string? Output,
    string Aspect,
    string Condition,
    string Name,
    double AsFound,
    double Now,
    double Prior,
    bool Consequence,
    string? Warning);

/// <summary>Something that may have befallen the engine; it is no cause to be mended, and makes causes likelier.</summary>
/// <param name="Id">The common cause.</param>
/// <param name="Name">The same in words.</param>
/// <param name="Probability">Belief that it did (0 to 1).</param>
/// <param name="Prior">What was believed before anything was heard.</param>
public sealed record CommonCauseBelief(string Id, string Name, double Probability, double Prior);

/// <summary>How badly the findings go together.</summary>
/// <param name="Measure">
/// ln(product of P(finding) / P(all findings)), the complaint counted as one: above 0 they are less likely together than if
/// they had nothing to do with each other, below 0 they support each other.
/// </param>
/// <param name="AtOdds">When the measure is 3 or more (together 20 times less likely than apart), the findings most at odds, the worst first.</param>
public sealed record ConflictAnswer(double Measure, IReadOnlyList<AtOddsAnswer> AtOdds);

/// <summary>A finding at odds with the others.</summary>
/// <param name="Entry">Its entry, or <c>complaint</c>.</param>
/// <param name="What">The finding in words.</param>
/// <param name="Measure">ln of how much less likely it is in this company than alone.</param>
public sealed record AtOddsAnswer(string Entry, string What, double Measure);

/// <summary>Causes that hold together, the rest summed out. No causes: none of those considered.</summary>
public sealed record JointExplanation(IReadOnlyList<string> Causes, double Probability);
