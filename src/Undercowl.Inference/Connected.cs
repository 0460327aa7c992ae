namespace Undercowl.Inference;

/// <summary>Finds the part of the tables that hangs together with one node; the rest cannot change that node's marginal.</summary>
internal static class Connected
{
    public static Leaf[] To(int node, Relevant relevant)
    {
        var reached = new bool[relevant.States.Length];
        reached[node] = true;
        var taken = new bool[relevant.Leaves.Count];
        for (var grew = true; grew;)
        {
            grew = false;
            for (var i = 0; i < taken.Length; i++)
            {
                var leaf = relevant.Leaves[i];
                if (taken[i] || (leaf.Node != node && !Array.Exists(leaf.Table.Scope, v => reached[v])))
                    continue;
                taken[i] = grew = true;
                foreach (var v in leaf.Table.Scope)
                    reached[v] = true;
            }
        }

        return [.. relevant.Leaves.Where((_, i) => taken[i])];
    }
}
