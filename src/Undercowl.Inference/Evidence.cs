using System.Globalization;

namespace Undercowl.Inference;

/// <summary>
/// What is known about one network: findings (states seen, and likelihoods for readings that are not certain) and
/// interventions (a node forced into a state, its own causes cut off). Findings are only ever likelihoods, never target
/// probabilities, because those do not commute: with likelihoods the order of entry cannot matter. A likelihood's scale is
/// free as far as marginals go; it multiplies the probability of the evidence. Each finding has a label with which
/// conflicts name it; findings that share a label are named, and withdrawn, together. Empty evidence is allowed.
/// </summary>
public sealed class Evidence
{
    private readonly List<Finding> _findings = [];
    private readonly int[] _forced;

    public Evidence(Network network)
    {
        ArgumentNullException.ThrowIfNull(network);
        Network = network;
        _forced = new int[network.Count];
        Array.Fill(_forced, -1);
    }

    public Network Network { get; }

    /// <summary>Number of findings; interventions are not findings.</summary>
    public int Count => _findings.Count;

    internal IReadOnlyList<Finding> Findings => _findings;

    public string Label(int finding) => _findings[finding].Label;

    /// <summary>The state the node was forced into, or -1 when it was left alone.</summary>
    public int Forced(int node) => _forced[node];

    /// <summary>The node was seen in this state. Returns the finding's number.</summary>
    public int Observe(int node, int state, string? label = null)
    {
        CheckState(node, state);
        return Store([node], OneHot(Network.States(node), state), label, state);
    }

    /// <summary>A reading that had the probability (or density) <paramref name="perState"/>[s] if the node is in state s.</summary>
    public int Likelihood(int node, ReadOnlySpan<double> perState, string? label = null) => Likelihood([node], perState, label);

    /// <summary>
    /// A reading that depends on several nodes at once: one number per joint state, the last node of
    /// <paramref name="scope"/> fastest.
    /// </summary>
    public int Likelihood(ReadOnlySpan<int> scope, ReadOnlySpan<double> dense, string? label = null)
    {
        if (scope.IsEmpty)
            throw Bad(label ?? "?", "a likelihood needs at least one node");
        var size = 1L;
        for (var i = 0; i < scope.Length; i++)
        {
            CheckState(scope[i], 0);
            if (scope[..i].Contains(scope[i]))
                throw Bad(label ?? Network.Name(scope[i]), "the same node is in its scope twice");
            size *= Network.States(scope[i]);
        }

        if (size != dense.Length)
            throw Bad(label ?? Network.Name(scope[0]), $"its likelihood has {dense.Length} numbers, but its nodes have {size} joint states");
        CheckNumbers(label ?? Network.Name(scope[0]), dense);
        return Store(scope.ToArray(), dense.ToArray(), label, -1);
    }

    /// <summary>
    /// Forces the node into a state from outside: its parents no longer matter to it, and it says nothing about them.
    /// A second intervention on the same node replaces the first.
    /// </summary>
    public void Intervene(int node, int state)
    {
        CheckState(node, state);
        _forced[node] = state;
    }

    /// <summary>The same interventions, with only those findings for which <paramref name="keep"/> says yes.</summary>
    public Evidence Where(Func<int, bool> keep)
    {
        ArgumentNullException.ThrowIfNull(keep);
        var copy = new Evidence(Network);
        _forced.CopyTo(copy._forced, 0);
        for (var i = 0; i < _findings.Count; i++)
        {
            if (keep(i))
                copy._findings.Add(_findings[i]);
        }

        return copy;
    }

    internal static void CheckNumbers(string label, ReadOnlySpan<double> numbers)
    {
        foreach (var x in numbers)
        {
            if (!(x >= 0 && x <= double.MaxValue))
                throw Bad(label, string.Create(CultureInfo.InvariantCulture, $"{x} is no likelihood; give finite numbers of 0 or more"));
        }
    }

    private static InferenceException Bad(string label, string what) => new(InferenceFault.Evidence, $"Finding '{label}': {what}.");

    private static double[] OneHot(int states, int state)
    {
        var x = new double[states];
        x[state] = 1;
        return x;
    }

    private int Store(int[] scope, double[] dense, string? label, int observed)
    {
        _findings.Add(new Finding(scope, dense, label ?? Network.Name(scope[0]), observed));
        return _findings.Count - 1;
    }

    private void CheckState(int node, int state)
    {
        if (node < 0 || node >= Network.Count)
            throw new InferenceException(InferenceFault.Evidence, $"There is no node number {node}; the network has {Network.Count} nodes.");
        if (state < 0 || state >= Network.States(node))
            throw new InferenceException(InferenceFault.Evidence, $"Node '{Network.Name(node)}' has no state number {state}; it has {Network.States(node)} states.");
    }
}

/// <summary>One finding: a dense likelihood over its scope (last node fastest). Observed is the state seen, or -1 when soft.</summary>
internal sealed record Finding(int[] Scope, double[] Dense, string Label, int Observed);
