using Undercowl.Diagnosis.Graph;
using Undercowl.Knowledge;

namespace Undercowl.Diagnosis.Planning;

/// <summary>A check that could be done next at a place: in which set-up, what it would read, and what its outcomes would be.</summary>
/// <param name="Check">The check.</param>
/// <param name="Place">Where.</param>
/// <param name="With">For a check that exchanges two parts: where the other one sits.</param>
/// <param name="SetUp">Its whole set-up.</param>
/// <param name="Signal">What it reads.</param>
/// <param name="Tool">Node of the tool's condition, or -1.</param>
/// <param name="ToolReadsWorst">Tool state to whether all readings are lost.</param>
/// <param name="Outcomes">Chances of the outcomes by level.</param>
internal sealed record Candidate(
    Check Check, string Place, string? With, IReadOnlyDictionary<string, string> SetUp, Signal Signal, int Tool, bool[] ToolReadsWorst, OutcomeTable Outcomes);
