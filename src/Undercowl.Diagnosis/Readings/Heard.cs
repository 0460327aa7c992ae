using Undercowl.Knowledge;

namespace Undercowl.Diagnosis.Readings;

/// <summary>A common cause as it stands in a job.</summary>
/// <param name="Cause">The common cause.</param>
/// <param name="After">Its chance after what was answered and seen, as if there were no other.</param>
/// <param name="Ties">True when what it bears on has it or not as one; else each aspect is heard of for itself.</param>
internal sealed record Heard(CommonCause Cause, double After, bool Ties);
