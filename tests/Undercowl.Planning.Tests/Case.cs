namespace Undercowl.Planning.Tests;

/// <summary>A problem being written down for a test; what is not said is absent, and refer is too dear to be chosen.</summary>
internal sealed record Case
{
    internal required double[] Weights { get; init; }

    /// <summary>One row per hypothesis; null: hypothesis i breaks component i alone.</summary>
    internal bool[][]? Broken { get; init; }

    internal double[] ActionCost { get; init; } = [];

    /// <summary>One row per action.</summary>
    internal double[][] Success { get; init; } = [];

    internal double[]? RepairCost { get; init; }

    internal int[]? ActionCluster { get; init; }

    internal bool[]? ActionAllowed { get; init; }

    internal double[] CheckCost { get; init; } = [];

    /// <summary>Per check, per hypothesis, the row of outcome probabilities.</summary>
    internal double[][][] Rows { get; init; } = [];

    internal int[]? CheckCluster { get; init; }

    internal bool[]? CheckAllowed { get; init; }

    /// <summary>Per decision, its cost by hypothesis.</summary>
    internal double[][] Decisions { get; init; } = [];

    internal ClusterTable Clusters { get; init; } = ClusterTable.None;

    internal double SystemTest { get; init; }

    internal double Refer { get; init; } = 1e6;

    internal int Components => Broken is null ? Weights.Length : Broken[0].Length;

    internal TroubleshootingProblem Build() => new(
        new HypothesisTable
        {
            Weights = Weights,
            Components = Components,
            Broken = Broken is null ? Diagonal(Weights.Length) : [.. Broken.SelectMany(row => row)],
        },
        new ActionTable
        {
            Cost = ActionCost,
            Success = [.. Success.SelectMany(row => row)],
            RepairCost = RepairCost,
            Cluster = ActionCluster,
            Allowed = ActionAllowed,
        },
        new CheckTable
        {
            Cost = CheckCost,
            Outcomes = [.. Rows.Select(rows => rows[0].Length)],
            OutcomeProbability = [.. Rows.SelectMany(rows => rows.SelectMany(row => row))],
            Cluster = CheckCluster,
            Allowed = CheckAllowed,
        },
        Clusters,
        SystemTest,
        Refer,
        new DecisionTable { Count = Decisions.Length, Cost = [.. Decisions.SelectMany(row => row)] });

    /// <summary>One perfect action for each of the single faults.</summary>
    internal static Case OneActionEach(double[] probability, double[] cost) =>
        new() { Weights = probability, ActionCost = cost, Success = Identity(cost.Length) };

    internal static double[][] Identity(int size) =>
        [.. Enumerable.Range(0, size).Select(i => Enumerable.Range(0, size).Select(j => i == j ? 1.0 : 0.0).ToArray())];

    private static bool[] Diagonal(int size)
    {
        var broken = new bool[size * size];
        for (int i = 0; i < size; i++) broken[i * size + i] = true;
        return broken;
    }
}
