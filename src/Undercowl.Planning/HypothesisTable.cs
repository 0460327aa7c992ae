namespace Undercowl.Planning;

/// <summary>
/// The states of the world that are still possible, each with a weight and with the components that must be mended
/// before the goal is met. Exactly one hypothesis is true; a hypothesis may have several broken components.
/// </summary>
/// <remarks>The arrays are not copied: leave them alone while a planner uses them.</remarks>
public sealed class HypothesisTable
{
    /// <summary>
    /// One weight per hypothesis: finite, not negative, not all zero; need not sum to 1. Weight 0 is impossible, and its
    /// rows in other tables are not read.
    /// </summary>
    public required double[] Weights { get; init; }

    /// <summary>Number of components, C; 0 or more.</summary>
    public required int Components { get; init; }

    /// <summary>
    /// <c>[h*C + c]</c>: whether component c must be mended in hypothesis h. A row without any means that the goal is met
    /// already, which only a system test can tell.
    /// </summary>
    public required bool[] Broken { get; init; }
}
