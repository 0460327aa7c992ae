namespace Undercowl.Planning;

/// <summary>
/// Set-ups shared by several steps: what has to be opened before them and closed after them. A step is in one cluster
/// or in none; clusters do not nest.
/// </summary>
/// <remarks>The arrays are not copied: leave them alone while a planner uses them.</remarks>
public sealed class ClusterTable
{
    /// <summary>A table without clusters.</summary>
    public static ClusterTable None { get; } = new() { OpenCost = [], CloseCost = [], IsOpen = [], TestInside = [] };

    /// <summary>One per cluster: paid when a step needs the cluster and it is closed. Finite, not negative.</summary>
    public required double[] OpenCost { get; init; }

    /// <summary>
    /// One per cluster, finite, not negative. Where the system can be tested with the cluster open, it is paid once, with the
    /// opening (nothing for a cluster open at the start: that is owed whatever one does). Otherwise it is paid at each
    /// system test that finds the cluster open, and the cluster is closed from then on. Referring closes nothing.
    /// </summary>
    public required double[] CloseCost { get; init; }

    /// <summary>One per cluster: whether it is open now.</summary>
    public required bool[] IsOpen { get; init; }

    /// <summary>One per cluster: whether the system can be tested while it is open.</summary>
    public required bool[] TestInside { get; init; }
}
