namespace Undercowl.Planning;

/// <summary>
/// What can be looked at without mending anything: costs, and how probable each outcome is under each hypothesis as it was at the
/// start, whatever has been mended since.
/// </summary>
/// <remarks>The arrays are not copied: leave them alone while a planner uses them.</remarks>
public sealed class CheckTable
{
    /// <summary>A table without checks.</summary>
    public static CheckTable None { get; } = new() { Cost = [], Outcomes = [], OutcomeProbability = [] };

    /// <summary>One per check: finite, not negative, in the unit of the action costs.</summary>
    public required double[] Cost { get; init; }

    /// <summary>One per check: number of outcomes, 1 or more.</summary>
    public required int[] Outcomes { get; init; }

    /// <summary>
    /// The checks' blocks one after another; within the block of check k, <c>[h*Outcomes[k] + o]</c> is the probability of
    /// outcome o under hypothesis h. Each row sums to 1; rows of hypotheses with weight 0 are not read.
    /// </summary>
    public required double[] OutcomeProbability { get; init; }

    /// <summary>One per check: the cluster it is made in, or -1. Null: no check is in a cluster.</summary>
    public int[]? Cluster { get; init; }

    /// <summary>One per check: whether it may be proposed. Null: all may.</summary>
    public bool[]? Allowed { get; init; }
}
