namespace Undercowl.Planning;

/// <summary>
/// Ways of ending the job other than mending and referring: naming what it is, using it as it stands, giving it up. What an
/// ending costs or yields depends on the hypothesis as it was at the start, whatever has been mended since.
/// </summary>
/// <remarks>The array is not copied: leave it alone while a planner uses it.</remarks>
public sealed class DecisionTable
{
    /// <summary>A table without decisions.</summary>
    public static DecisionTable None { get; } = new() { Count = 0, Cost = [] };

    /// <summary>Number of decisions, 0 or more.</summary>
    public required int Count { get; init; }

    /// <summary><c>[d*H + h]</c>: cost of decision d under hypothesis h, in the unit of the other costs; finite, a payoff below 0.</summary>
    public required double[] Cost { get; init; }
}
