using System.Numerics;

namespace Undercowl.Inference;

/// <summary>
/// For every node that is a function of others: the uncertain nodes it comes from, and how many functions lie between.
/// Copies of one thing (the same chain in another set-up) share most of their sources, different things that merely touch
/// share few; that is how a plan tells what to join early from what to keep apart.
/// </summary>
internal sealed class Sources
{
    private readonly ulong[]?[] _of;
    private readonly int[] _depth;

    public Sources(IReadOnlyList<Leaf> leaves, int nodes)
    {
        _of = new ulong[nodes][];
        _depth = new int[nodes];
        Functions = new bool[nodes];
        // Leaves come with parents before children, so one sweep each way is enough.
        foreach (var leaf in leaves)
        {
            if (!IsFunction(leaf))
                continue;
            Functions[leaf.Node] = true;
            var sources = _of[leaf.Node] = new ulong[(nodes + 63) / 64];
            foreach (var v in leaf.Table.Scope)
            {
                if (!Functions[v])
                    sources[v / 64] |= 1UL << (v % 64);
                else if (v != leaf.Node)
                    Unite(sources, _of[v]!);
            }

            _depth[leaf.Node] = Depth(leaf.Table, leaf.Node) + 1;
        }

        for (var i = leaves.Count - 1; i >= 0; i--)
            SpreadBack(leaves[i]);
    }

    /// <summary>Which nodes are functions of others, given the evidence.</summary>
    public bool[] Functions { get; }

    /// <summary>Functions between the roots and what this table reads, at most; what it defines does not count.</summary>
    public int Depth(Table table, int defines)
    {
        var deepest = 0;
        foreach (var v in table.Scope)
            deepest = v == defines ? deepest : Math.Max(deepest, _depth[v]);
        return deepest;
    }

    public void Unite(ref ulong[]? into, int function)
    {
        into ??= new ulong[_of[function]!.Length];
        Unite(into, _of[function]!);
    }

    public static void Unite(ulong[] into, ulong[] from)
    {
        for (var i = 0; i < into.Length; i++)
            into[i] |= from[i];
    }

    /// <summary>Shared members over the members of the smaller set: 0 to 1.</summary>
    public static double Overlap(ulong[] a, ulong[] b)
    {
        int both = 0, countA = 0, countB = 0;
        for (var i = 0; i < a.Length; i++)
        {
            both += BitOperations.PopCount(a[i] & b[i]);
            countA += BitOperations.PopCount(a[i]);
            countB += BitOperations.PopCount(b[i]);
        }

        return both / (double)Math.Max(1, Math.Min(countA, countB));
    }

    private static bool IsFunction(Leaf leaf) =>
        leaf.Node >= 0 && leaf.Table.Scope.Length > 1 && leaf.Table.Covers(leaf.Node) && Array.TrueForAll(leaf.Table.Values, p => p == 1);

    /// <summary>A link of a chain takes on the sources of the links after it, so that like chains are known from their first link.</summary>
    private void SpreadBack(Leaf leaf)
    {
        if (leaf.Node < 0 || !Functions[leaf.Node])
            return;
        var parent = -1;
        foreach (var v in leaf.Table.Scope)
        {
            if (!Functions[v] || v == leaf.Node)
                continue;
            if (parent >= 0)
                return;
            parent = v;
        }

        if (parent >= 0)
            Unite(_of[parent]!, _of[leaf.Node]!);
    }
}
