namespace Undercowl.Diagnosis.Graph;

/// <summary>What a signal comes to where one condition is all that is amiss, and nothing that comes and goes shows.</summary>
internal sealed class OneAmiss(NodeGraph graph)
{
    /// <param name="signal">The signal.</param>
    /// <param name="node">The node of an aspect as found.</param>
    /// <param name="state">Its state.</param>
    public int Level(Signal signal, int node, int state)
    {
        if (signal.IsConstant)
        {
            return signal.Level;
        }

        var known = new Dictionary<int, int> { [node] = state };
        return signal.Map[State(signal.Node)];

        int State(int at)
        {
            if (!known.TryGetValue(at, out var found))
            {
                var of = graph[at];
                var row = 0;
                foreach (var parent in of.Function is null ? [] : of.Parents)
                {
                    row = row * graph[parent].States.Length + State(parent);
                }

                known[at] = found = of.Function?[row] ?? 0;
            }

            return found;
        }
    }
}
