using Undercowl.Diagnosis.Graph;

namespace Undercowl.Diagnosis;

/// <summary>A finding's set-up that some levels of a quantity do not allow, and that was reached all the same.</summary>
/// <param name="Quantity">Of the engine.</param>
/// <param name="Signal">Its level in that set-up.</param>
/// <param name="PerLevel">Chance that the set-up is reached, by level.</param>
/// <param name="By">The finding that tells so.</param>
internal sealed record ReachedSetUp(string Quantity, Signal Signal, double[] PerLevel, LaidFinding By);
