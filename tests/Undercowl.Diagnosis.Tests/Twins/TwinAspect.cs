using Undercowl.Knowledge;

namespace Undercowl.Diagnosis.Tests.Twins;

/// <summary>One aspect of one part of an engine, or of one output of it.</summary>
/// <param name="Name"><c>kind@place[/output].aspect</c>.</param>
/// <param name="Part"><c>kind@place</c>.</param>
/// <param name="Output">The cylinder whose output it is; 0 when it is the whole part's.</param>
/// <param name="Lane">The first cylinder that it serves.</param>
/// <param name="Aspect">As the knowledge has it.</param>
/// <param name="Conditions">The conditions that this engine can have.</param>
internal sealed record TwinAspect(string Name, string Part, int Output, int Lane, Aspect Aspect, Condition[] Conditions)
{
    /// <summary><c>kind.aspect</c>.</summary>
    public string Kind { get; } = $"{Part.Split('@')[0]}.{Aspect.Id}";

    /// <summary>Sound first.</summary>
    public double[] Chances { get; } = [1 - Conditions.Sum(c => c.Prior), .. Conditions.Select(c => c.Prior)];
}
