namespace Undercowl.Diagnosis.Beliefs;

/// <summary>
/// Which nodes a belief can depend on: what leads to anything read or to the cause itself, as far as it hangs together with the cause. What leads
/// to nothing that was read, or has no connection with the cause, cancels out.
/// </summary>
internal static class Touching
{
    /// <param name="network">The job.</param>
    /// <param name="cause">A node; -1 for all that was read.</param>
    public static HashSet<int> Nodes(JobNetwork network, int cause)
    {
        var leading = new HashSet<int>();
        int[] read = [.. network.ComplaintSignals.Select(s => s.Node)
            .Concat(network.Laid.SelectMany(l => new[] { l.Signal.Node, l.Tool }))
            .Concat(network.Answers.SelectMany(a => a.Told.SelectMany(t => t.Nodes)))
            .Concat(network.Results.SelectMany(r => r.Told.Select(t => t.Signal.Node)))
            .Concat(network.Reached.Select(r => r.Signal.Node)).Append(cause).Where(n => n >= 0)];
        var left = new Stack<int>(read);
        while (left.TryPop(out var node))
        {
            if (leading.Add(node))
            {
                foreach (var parent in network.Graph[node].Parents)
                {
                    left.Push(parent);
                }
            }
        }

        return cause < 0 ? leading : Together(network, leading, cause);
    }

    /// <summary>A node hangs together with its parents, and one reading that depends on a tool's state with that tool.</summary>
    private static HashSet<int> Together(JobNetwork network, HashSet<int> leading, int cause)
    {
        var near = leading.ToDictionary(n => n, _ => new List<int>());
        foreach (var (one, other) in leading.SelectMany(n => network.Graph[n].Parents.Select(p => (n, p)))
            .Concat(network.Laid.Where(l => l.Tool >= 0 && !l.Signal.IsConstant).Select(l => (l.Signal.Node, l.Tool))))
        {
            near[one].Add(other);
            near[other].Add(one);
        }

        var found = new HashSet<int>();
        var left = new Stack<int>([cause]);
        while (left.TryPop(out var node))
        {
            if (found.Add(node))
            {
                foreach (var next in near[node])
                {
                    left.Push(next);
                }
            }
        }

        return found;
    }
}
