namespace Undercowl.Diagnosis.Graph;

/// <summary>
/// A level as a function of one node's state, or a constant when <see cref="Node"/> is -1. Maps are composed instead of
/// making nodes that only rename states.
/// </summary>
internal readonly record struct Signal(int Node, int[] Map)
{
    public bool IsConstant => Node < 0;

    /// <summary>The level of a constant.</summary>
    public int Level => Map[0];

    public static Signal Constant(int level) => new(-1, [level]);

    public static Signal Of(int node, int[] map)
    {
        foreach (var level in map)
        {
            if (level != map[0])
            {
                return new Signal(node, map);
            }
        }

        return Constant(map[0]);
    }

    /// <summary>The same signal with its levels renamed.</summary>
    public Signal Through(int[] map) => Of(Node, Array.ConvertAll(Map, level => map[level]));
}
