using System.Numerics;

namespace Undercowl.Jobs;

/// <summary>
/// Who comes before whom, by index in canonical order. A job kept by one device is a chain, so each set is held as "all
/// below this index" and bits for the rest: a chain of n entries costs n numbers, not n² bits.
/// </summary>
internal sealed class AncestorSets
{
    private readonly int[] below;
    private readonly ulong[][] bits;

    /// <param name="parents">For each entry its parents' indices, each smaller than its own.</param>
    public AncestorSets(IReadOnlyList<int[]> parents)
    {
        below = new int[parents.Count];
        bits = new ulong[parents.Count][];
        for (var i = 0; i < parents.Count; i++)
            Fill(i, parents[i]);
    }

    /// <summary>True when <paramref name="earlier"/> is a proper ancestor of <paramref name="later"/>.</summary>
    public bool Precedes(int earlier, int later)
    {
        if (earlier < below[later])
            return true;
        var word = (earlier >> 6) - (below[later] >> 6);
        var set = bits[later];
        return word < set.Length && (set[word] >> (earlier & 63) & 1) != 0;
    }

    private void Fill(int i, int[] parents)
    {
        if (parents.Length == 0)
        {
            bits[i] = [];
            return;
        }

        var start = 0;
        var end = 0;
        foreach (var parent in parents)
        {
            start = Math.Max(start, below[parent]);
            end = Math.Max(end, parent + 1);
        }

        // Words from the one that holds `start` on. No parent's own words begin later; some may begin earlier.
        var first = start >> 6;
        var set = new ulong[Math.Max(0, ((end + 63) >> 6) - first)];
        foreach (var parent in parents)
        {
            var shift = first - (below[parent] >> 6);
            for (var word = Math.Max(0, shift); word < bits[parent].Length; word++)
                set[word - shift] |= bits[parent][word];
            if (parent >= start)
                set[(parent >> 6) - first] |= 1UL << (parent & 63);
        }

        below[i] = Advance(start, set);
        var drop = (below[i] >> 6) - first;
        bits[i] = drop >= set.Length || set.AsSpan(drop).IndexOfAnyExcept(0UL) < 0 ? [] : set[drop..];
    }

    // How far "all below" reaches once the bits directly above it are counted in.
    private static int Advance(int start, ulong[] set)
    {
        var at = start;
        while (at >> 6 is var word && word - (start >> 6) is var index && index < set.Length)
        {
            var run = BitOperations.TrailingZeroCount(~(set[index] >> (at & 63)));
            if (run == 0)
                break;
            at += Math.Min(run, 64 - (at & 63));
        }

        return at;
    }
}
