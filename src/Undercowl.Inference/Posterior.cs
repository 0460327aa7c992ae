namespace Undercowl.Inference;

/// <summary>
/// What follows from the evidence: how probable the evidence itself was, and the probability of each state of each node
/// given it. Exact within floating point, or, where the exact sum did not fit, within <see cref="ErrorBound"/> for every
/// single probability. Immutable to its user; not thread-safe, because marginals of left-out nodes are computed when asked for.
/// </summary>
public sealed class Posterior
{
    private readonly EliminationOptions _options;
    private readonly Circuit? _circuit;
    private readonly BoundedSum? _bounded;
    private readonly Dictionary<int, double[]> _later = [];
    private Sampling? _sampling;

    internal Posterior(Evidence evidence, EliminationOptions options, Circuit circuit)
    {
        Evidence = evidence;
        _options = options;
        _circuit = circuit;
        LogEvidence = circuit.LogEvidence;
        Possible = circuit.Possible;
        // R / (Z + R) = 1 / (1 + Z / R), which stays in range however small both are.
        ErrorBound = double.IsNegativeInfinity(circuit.LogLost) ? 0 : 1 / (1 + Math.Exp(circuit.LogEvidence - circuit.LogLost));
    }

    internal Posterior(Evidence evidence, EliminationOptions options, BoundedSum bounded)
    {
        Evidence = evidence;
        // Left-out nodes must be answered with the same roots and so the same bound.
        _options = options with { Rare = bounded.Rare };
        _bounded = bounded;
        LogEvidence = bounded.LogEvidence;
        ErrorBound = bounded.ErrorBound;
        Possible = bounded.Possible;
    }

    public Evidence Evidence { get; }

    public Network Network => Evidence.Network;

    /// <summary>False when the findings contradict each other: then <see cref="LogEvidence"/> is minus infinity and there are no marginals.</summary>
    public bool Possible { get; }

    /// <summary>Natural logarithm of the probability of the evidence. With an <see cref="ErrorBound"/> it is a lower bound.</summary>
    public double LogEvidence { get; }

    /// <summary>No probability handed out is further than this from the true one; 0 when exact.</summary>
    public double ErrorBound { get; }

    /// <summary>How many roots a bounded sum enumerated; 0 when exact.</summary>
    public int Rare => _bounded?.Rare.Count ?? 0;

    /// <summary>How many joint assignments of those it looked at and found possible.</summary>
    public int Covered => _bounded?.Covered ?? 0;

    /// <summary>What the bound of a bounded sum is made of; null when the sum was exact or stage by stage.</summary>
    public BoundTerms? Terms => _bounded is null ? null : new(_bounded.Omitted, _bounded.LogLargest, _bounded.LogEvidence);

    /// <summary>What the bound of a sum stage by stage is made of; null when nothing was left out, and of a bounded sum.</summary>
    public SweptTerms? Swept => _circuit is null || double.IsNegativeInfinity(_circuit.LogLost) ? null : new(_circuit.LogShed, _circuit.LogLost, LogEvidence);

    /// <summary>True when the error bound is large enough to tell the reader: above one in a million.</summary>
    public bool Approximate => ErrorBound > 1e-6;

    /// <summary>Rows built in all (of all assignments, after a bounded sum).</summary>
    public long Rows => _circuit?.Rows ?? _bounded!.Rows;

    /// <summary>Products of two rows made in one pass.</summary>
    public long Products => _circuit?.Products ?? _bounded!.Products;

    /// <summary>Rows of the largest table.</summary>
    public int LargestTable => _circuit?.LargestTable ?? _bounded!.LargestTable;

    /// <summary>
    /// Probability of each state of the node given the evidence. Free for nodes that were wanted or lead to evidence; for
    /// another node the first call costs an elimination, which must fit in the row budget. After a sum stage by stage that left
    /// something out there is no such second call: a node that was not wanted raises the evidence fault.
    /// </summary>
    public ReadOnlySpan<double> Marginal(int node)
    {
        Require();
        if (_circuit?.TryMarginal(node, out var marginal) ?? _bounded!.TryMarginal(node, out marginal))
            return marginal;
        if (_later.TryGetValue(node, out marginal))
            return marginal;
        if (Evidence.Forced(node) >= 0 || Network.Parents(node).IsEmpty)
            return _later[node] = Unmoved(node);
        var options = _options with { Wanted = [node], AllowBounded = false };
        if (_circuit is not null && !double.IsNegativeInfinity(_circuit.LogLost))
            throw new InferenceException(InferenceFault.Evidence, $"Node '{Network.Name(node)}' was not asked for when the sum was made stage by stage, which cannot be added to; name it in EliminationOptions.Wanted.");
        if (_circuit is not null)
            Circuit.CompileOnce(Evidence, options, node).TryMarginal(node, out marginal);
        else
            new BoundedSum(Evidence, options).TryMarginal(node, out marginal);
        _later[node] = marginal!;
        return marginal!;
    }

    /// <summary>
    /// Joint probability of these nodes given the evidence: dense, the last node fastest. The rest is summed out exactly by
    /// an elimination of its own, which must fit in the row budget (so must the joint states); a bounded posterior has none.
    /// </summary>
    public double[] Joint(params ReadOnlySpan<int> nodes)
    {
        Require();
        var joint = JointRows.Of(Evidence, nodes.ToArray(), _options);
        return joint.Dense();
    }

    /// <summary>
    /// Draws joint states from the posterior: <paramref name="count"/> rows of <see cref="Network.Count"/> states each. The
    /// same seed gives the same draws on every platform. Each draw by itself is exact (where something was left out, of the rest);
    /// together they are shared out evenly, so that counts scatter less than those of independent draws.
    /// </summary>
    public int[] Sample(ulong seed, int count)
    {
        Require();
        ArgumentOutOfRangeException.ThrowIfNegative(count);
        var random = new SplitMix64(seed);
        if (_bounded is not null)
            return _bounded.Sample(random, count);
        return (_sampling ??= new Sampling(_circuit!)).Draw(random, count);
    }

    /// <summary>What is known of a node that no finding bears on and that has no parents to follow.</summary>
    private double[] Unmoved(int node)
    {
        if (Evidence.Forced(node) < 0)
            return Network.DenseTable(node);
        var marginal = new double[Network.States(node)];
        marginal[Evidence.Forced(node)] = 1;
        return marginal;
    }

    private void Require()
    {
        if (!Possible)
            throw new InferenceException(InferenceFault.Impossible, "The findings cannot all be true, so nothing has a probability given them; withdraw one that Conflict names.");
    }
}
