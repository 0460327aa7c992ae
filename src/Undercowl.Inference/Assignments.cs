namespace Undercowl.Inference;

/// <summary>
/// Lists joint states of independent variables in decreasing weight. Variables are ranked by the ratio of their second to
/// their first state; each assignment is the all-first one with a few deviations, and is reached from exactly one heavier
/// one: by a further rank of its last deviation, by moving that to the next variable, or by adding the next variable.
/// </summary>
internal static class Assignments
{
    /// <summary>weights[i][s] sum to 1 for each variable i; states of weight 0 never occur.</summary>
    public static IEnumerable<(int[] States, double Weight)> InOrder(double[][] weights)
    {
        var ranked = Array.ConvertAll(weights, Ranked);
        var order = new int[weights.Length];
        for (var i = 0; i < order.Length; i++)
            order[i] = i;
        Array.Sort(order, (x, y) => Ratio(weights, ranked, y, 1).CompareTo(Ratio(weights, ranked, x, 1)) is var c && c != 0 ? c : x.CompareTo(y));
        var top = 1.0;
        for (var i = 0; i < weights.Length; i++)
            top *= weights[i][ranked[i][0]];
        var queue = new PriorityQueue<(int Place, int Rank)[], (double Negative, long Order)>();
        var made = 0L;
        queue.Enqueue([], (-top, made++));
        while (queue.TryDequeue(out var deviations, out var priority))
        {
            var states = Array.ConvertAll(ranked, r => r[0]);
            foreach (var (place, rank) in deviations)
                states[order[place]] = ranked[order[place]][rank];
            yield return (states, -priority.Negative);
            var last = deviations.Length == 0 ? (Place: -1, Rank: 0) : deviations[^1];
            if (deviations.Length > 0)
                Push([.. deviations[..^1], (last.Place, last.Rank + 1)]);
            if (last.Rank == 1)
                Push([.. deviations[..^1], (last.Place + 1, 1)]);
            Push([.. deviations, (last.Place + 1, 1)]);
        }

        void Push((int Place, int Rank)[] deviations)
        {
            var (place, rank) = deviations[^1];
            if (place >= order.Length || rank >= ranked[order[place]].Length)
                return;
            var weight = top;
            foreach (var (p, r) in deviations)
                weight *= Ratio(weights, ranked, order[p], r);
            queue.Enqueue(deviations, (-weight, made++));
        }
    }

    /// <summary>States of positive weight, heaviest first.</summary>
    private static int[] Ranked(double[] weights)
    {
        var states = new List<int>();
        for (var s = 0; s < weights.Length; s++)
        {
            if (weights[s] > 0)
                states.Add(s);
        }

        states.Sort((x, y) => weights[y].CompareTo(weights[x]) is var c && c != 0 ? c : x.CompareTo(y));
        return [.. states];
    }

    private static double Ratio(double[][] weights, int[][] ranked, int variable, int rank) =>
        rank < ranked[variable].Length ? weights[variable][ranked[variable][rank]] / weights[variable][ranked[variable][0]] : 0;
}
