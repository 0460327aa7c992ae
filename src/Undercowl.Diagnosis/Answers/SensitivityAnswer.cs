namespace Undercowl.Diagnosis.Answers;

/// <summary>Which numbers of the knowledge, moved as far as their source says that they may be off, would change the next step.</summary>
/// <param name="Version">Version of this document's form.</param>
/// <param name="Next">The next step as it stands.</param>
/// <param name="Turning">The numbers that would change it, those of the likeliest conditions first.</param>
/// <param name="Tried">How many numbers were moved, each up and down by itself.</param>
/// <param name="NotTried">How many that touch the job were not: their source says nothing of how far they may be off, or they belong to the least likely conditions.</param>
public sealed record SensitivityAnswer(int Version, StepName Next, IReadOnlyList<TurningNumber> Turning, int Tried, int NotTried);

/// <summary>A step by kind, id, place and in words.</summary>
public sealed record StepName(string Kind, string Id, string Place, string Name);

/// <summary>A number that would change the next step.</summary>
/// <param name="Factor">The number.</param>
/// <param name="To">The value at the end of its range that changes the step.</param>
/// <param name="Instead">What would then come next.</param>
public sealed record TurningNumber(FactorAnswer Factor, double To, StepName Instead);
