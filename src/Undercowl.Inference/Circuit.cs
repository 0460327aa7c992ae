using System.Diagnostics.CodeAnalysis;

namespace Undercowl.Inference;

/// <summary>
/// An elimination laid out once for a network, the nodes observed and forced, and the places where likelihoods act; the
/// likelihoods' numbers may then change and <see cref="Propagate"/> gives all marginals again without structural work and
/// without allocating. Use it to ask many what-ifs of one structure: give a node a likelihood of ones, then set it to one
/// state after another. Not thread-safe, and its answers are overwritten by the next run; for a lasting answer use
/// <see cref="Elimination"/>. Always exact: over budget it raises the row-budget fault.
/// </summary>
public sealed class Circuit
{
    private readonly Likelihoods _likelihoods;
    private readonly double[]?[] _marginals;
    private readonly double[]?[] _shares;
    private readonly double[] _values;
    private readonly double[] _derivatives;
    private readonly double[] _scales;
    private readonly bool _zerosAreReal;
    private readonly bool _hopeless;
    private bool _ready;

    private Circuit(Evidence evidence, EliminationOptions options, bool keepZeros, IReadOnlyList<int> kept, int about, SweepWay? sweep = null)
    {
        Evidence = evidence;
        _zerosAreReal = !keepZeros;
        var network = evidence.Network;
        Relevant = new Relevant(evidence, options.Wanted, keepZeros, lump: true);
        _likelihoods = new Likelihoods(evidence);
        _marginals = new double[network.Count][];
        _shares = new double[network.Count][];
        Possible = Relevant.Possible;
        if (!Possible)
        {
            _hopeless = true;
            _values = _derivatives = _scales = [];
            return;
        }

        Leaves = about < 0 ? [.. Relevant.Leaves] : Connected.To(about, Relevant);
        foreach (var leaf in Leaves)
            Tape.Place(leaf.Table);
        var tables = new TableSet(Tape, Relevant, kept, options);
        foreach (var leaf in Leaves)
            tables.Attach(leaf.Table);
        if (sweep is not null)
        {
            var plan = new SweepPlan(tables, Leaves, Relevant.States, evidence, Tape, _likelihoods, options, sweep);
            plan.Run();
            (LogLost, LogShed) = (plan.LogLost, plan.LogShed);
        }
        else if (options.Order == EliminationOrder.Causal)
            new CausalPlan(tables, Leaves).Run();
        else
            new BucketPlan(tables, options.Order).Run();
        Kept = tables.JoinRest();
        Possible = !tables.Empty;
        _hopeless = tables.Empty;
        foreach (var scalar in tables.Scalars)
            Tape.AddRoot(scalar);
        _values = new double[Tape.Rows];
        _derivatives = new double[Tape.Rows];
        _scales = new double[Tape.Steps.Count];
        MakeMarginals();
    }

    public Evidence Evidence { get; }

    /// <summary>False when the evidence is impossible (after <see cref="Propagate"/>, with the present likelihoods).</summary>
    public bool Possible { get; private set; }

    /// <summary>Natural logarithm of the probability of the evidence; minus infinity when it is impossible.</summary>
    public double LogEvidence { get; private set; } = double.NegativeInfinity;

    /// <summary>Logarithm of the most that was left out of the evidence's probability; minus infinity when it is exact.</summary>
    internal double LogLost { get; } = double.NegativeInfinity;

    /// <summary>Logarithm of what was left out as it stood then, before the findings that were still to come.</summary>
    internal double LogShed { get; } = double.NegativeInfinity;

    /// <summary>All rows of all tables, given and made.</summary>
    public int Rows => Tape.Rows;

    /// <summary>Products of two rows in one pass; a propagation makes two passes.</summary>
    public long Products => Tape.Products;

    /// <summary>Rows of the largest table.</summary>
    public int LargestTable => Tape.LargestTable;

    internal Relevant Relevant { get; }

    internal Leaf[] Leaves { get; } = [];

    internal Tape Tape { get; } = new();

    internal Table? Kept { get; }

    internal double[] Values => _values;

    /// <summary>Lays out the elimination for this evidence and propagates once.</summary>
    public static Circuit Compile(Evidence evidence, EliminationOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(evidence);
        var circuit = new Circuit(evidence, options ?? EliminationOptions.Default, keepZeros: true, [], -1);
        circuit.Propagate();
        return circuit;
    }

    /// <summary>For one answer: zeros of likelihoods are dropped as well. With a node in about, only what is connected to it.</summary>
    internal static Circuit CompileOnce(Evidence evidence, EliminationOptions options, int about = -1)
    {
        var circuit = new Circuit(evidence, options, keepZeros: false, [], about);
        circuit.Propagate();
        return circuit;
    }

    /// <summary>Stage after stage, with the lightest joint states left out.</summary>
    internal static Circuit CompileSwept(Evidence evidence, EliminationOptions options, SweepWay way)
    {
        var circuit = new Circuit(evidence, options, keepZeros: false, [], -1, way);
        circuit.Propagate();
        return circuit;
    }

    /// <summary>The up-pass alone, with the kept variables left in <see cref="Kept"/>.</summary>
    internal static Circuit CompileKept(Evidence evidence, EliminationOptions options, IReadOnlyList<int> kept)
    {
        var circuit = new Circuit(evidence, options, keepZeros: false, kept, -1);
        if (!circuit._hopeless)
            circuit.Up();
        return circuit;
    }

    /// <summary>
    /// Replaces the numbers of a finding that was given as a likelihood (not as an observed state): per state, or dense over
    /// its scope with the last node fastest. Takes effect at the next <see cref="Propagate"/>.
    /// </summary>
    public void SetLikelihood(int finding, ReadOnlySpan<double> numbers)
    {
        var f = Evidence.Findings[finding];
        if (f.Observed >= 0)
            throw new InferenceException(InferenceFault.Evidence, $"Finding '{f.Label}' is an observed state; give it as a likelihood if it is to change.");
        if (numbers.Length != f.Dense.Length)
            throw new InferenceException(InferenceFault.Evidence, $"Finding '{f.Label}' takes {f.Dense.Length} numbers, not {numbers.Length}.");
        Evidence.CheckNumbers(f.Label, numbers);
        _likelihoods.Set(finding, numbers);
        _ready = false;
    }

    /// <summary>Computes the probability of the evidence and every marginal with the present numbers.</summary>
    public void Propagate()
    {
        _ready = true;
        if (_hopeless || !Up())
            return;
        Tape.Down(_values, _derivatives, _scales);
        foreach (var leaf in Leaves)
        {
            if (leaf.Node < 0 || Relevant.Fixed[leaf.Node] >= 0 || _marginals[leaf.Node] is not { } marginal)
                continue;
            Array.Clear(marginal);
            var offset = leaf.Table.Offset;
            var index = leaf.Index;
            var total = 0.0;
            for (var r = 0; r < index.Length; r++)
            {
                var share = _values[offset + r] * _derivatives[offset + r];
                marginal[index[r]] += share;
                total += share;
            }

            if (!(Math.Abs(total - 1) < 1e-6))
                throw OutOfRange();
            var standFor = Relevant.StandFor[leaf.Node];
            for (var s = marginal.Length - 1; s >= 0; s--)
                marginal[s] = standFor is null ? marginal[s] / total : marginal[standFor[s]] * _shares[leaf.Node]![s] / total;
        }
    }

    /// <summary>
    /// Probability of each state given the evidence. Raises a fault when the evidence is impossible, when a likelihood was
    /// set and not yet propagated, or when the node is not among the answers: roots that lead to evidence and nodes that
    /// are wanted always are, other nodes unless states of theirs that nothing tells apart were merged.
    /// </summary>
    public ReadOnlySpan<double> Marginal(int node)
    {
        if (!_ready)
            throw new InvalidOperationException("A likelihood was set after the last Propagate.");
        if (!Possible)
            throw new InferenceException(InferenceFault.Impossible, "The findings cannot all be true, so nothing has a probability given them.");
        return TryMarginal(node, out var marginal)
            ? marginal
            : throw new InferenceException(InferenceFault.Evidence, $"Node '{Evidence.Network.Name(node)}' was left out or its states merged; name it in EliminationOptions.Wanted.");
    }

    internal bool TryMarginal(int node, [NotNullWhen(true)] out double[]? marginal)
    {
        marginal = _marginals[node];
        return marginal is not null;
    }

    private static InferenceException OutOfRange() =>
        new(InferenceFault.Range, "A probability that is not zero left the range of a double; scale the likelihoods of one node to be within 1e300 of each other.");

    /// <summary>Each state's part of the prior of those it was merged with.</summary>
    private static double[] Shares(double[] prior, int[] standFor)
    {
        var sums = new double[prior.Length];
        for (var s = 0; s < prior.Length; s++)
            sums[standFor[s]] += prior[s];
        var shares = new double[prior.Length];
        for (var s = 0; s < prior.Length; s++)
            shares[s] = prior[s] == 0 ? 0 : prior[s] / sums[standFor[s]];
        return shares;
    }

    private void MakeMarginals()
    {
        var network = Evidence.Network;
        foreach (var leaf in Leaves)
        {
            if (leaf.Node < 0)
                continue;
            if (Relevant.StandFor[leaf.Node] is { } standFor)
            {
                // Only a root's merged states can be told apart again without its parents.
                if (network.Parents(leaf.Node).Length > 0)
                    continue;
                _shares[leaf.Node] = Shares(network.DenseTable(leaf.Node), standFor);
            }

            _marginals[leaf.Node] = new double[Relevant.States[leaf.Node]];
            if (Relevant.Fixed[leaf.Node] is var state and >= 0)
                _marginals[leaf.Node]![state] = 1;
        }
    }

    private bool Up()
    {
        long exponents = 0;
        foreach (var leaf in Leaves)
            exponents += leaf.Fill(_values, _likelihoods.Numbers);
        foreach (var e in _likelihoods.Exponents)
            exponents += e;
        exponents += Tape.Up(_values, _scales);
        var log = exponents * Math.Log(2);
        for (var i = 0; i < Tape.Roots.Count; i++)
            log += Math.Log(_values[Tape.Roots[i]]);
        LogEvidence = log;
        Possible = log > double.NegativeInfinity;
        if (!Possible && _zerosAreReal)
            throw OutOfRange();
        return Possible;
    }
}
