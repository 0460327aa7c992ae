namespace Undercowl.Jobs;

/// <summary>Which entries hold, given which withdraw which.</summary>
internal static class Liveness
{
    /// <summary>
    /// For each index the index of a live withdrawal of it, or -1. Walks backwards: a withdrawal comes after what it
    /// withdraws, so by then it is known whether it holds itself.
    /// </summary>
    /// <param name="targets">For each entry the index it withdraws, smaller than its own, or -1.</param>
    /// <param name="also">One more entry to take as withdrawn, or -1.</param>
    public static int[] WithdrawnBy(int[] targets, int also = -1)
    {
        var by = new int[targets.Length];
        Array.Fill(by, -1);
        if (also >= 0)
            by[also] = also;
        for (var i = targets.Length - 1; i >= 0; i--)
        {
            if (targets[i] >= 0 && by[i] < 0)
                by[targets[i]] = i;
        }

        return by;
    }
}
