using System.Diagnostics.CodeAnalysis;

namespace Undercowl.Inference;

/// <summary>
/// The posterior from a set H of joint assignments of rare roots, taken in decreasing weight; everything else, common
/// faults included, is summed exactly for each.
/// <para>
/// The bound. Let w(h) be the prior of assignment h times the single-node likelihoods on the rare roots, divided by the
/// sum W of that over all assignments, so that w sums to 1. Let e be the evidence, and for each other finding i let L_i be
/// its largest value: for a likelihood its largest number (over states still possible), for an observed node the largest
/// entry of its own distribution for the state seen. Put L* = W times the product of the L_i.
/// (1) P(h, e) is at most w(h) L*. Write P(h, e) as the sum, over the nodes that are neither rare nor observed, of the
/// product of all distributions and likelihoods. Replace every likelihood and every observed node's distribution by its
/// L_i: no term gets smaller. What remains is W w(h) times a sum of products of distributions of unobserved nodes given
/// their parents, which is at most 1, children summed first.
/// (2) With Z = sum of P(h, e) over H, R = the same sum over all other assignments and d = 1 - w(H), (1) gives
/// 0 &lt;= R &lt;= d L*.
/// (3) For a state s of any node let n be its part of Z and m its part of R, 0 &lt;= m &lt;= R. The answer given is n / Z,
/// the truth (n + m) / (Z + R). Their difference is (m - R n / Z) / (Z + R); as n / Z lies in [0, 1], the numerator lies in
/// [-R, R]; so the error is at most R / (Z + R), which grows with R and hence is at most d L* / (Z + d L*).
/// </para>
/// <para>d is rounded up by more than its own rounding error, so that it is never too small.</para>
/// </summary>
internal sealed class BoundedSum
{
    /// <summary>2^-52: twice the relative rounding error of one operation.</summary>
    private const double Rounding = 2.220446049250313e-16;

    private readonly Evidence _evidence;
    private readonly bool _chosenByCaller;
    private readonly long _most;
    private EliminationOptions _options;
    /// <summary>What one assignment may use of the row budget, as a divisor.</summary>
    private const int ShareOfOne = 20;

    private readonly List<(int[] States, double LogWeight)> _covered = [];
    private readonly double[]?[] _sums;
    private double _reference = double.NegativeInfinity;
    private double _total;

    public BoundedSum(Evidence evidence, EliminationOptions options)
    {
        _evidence = evidence;
        // One assignment should be cheap, or few would be covered; a root that makes it dear is enumerated as well.
        _options = options with { RowBudget = Math.Max(1, options.RowBudget / ShareOfOne) };
        _most = options.RowBudget;
        _chosenByCaller = options.Rare is not null;
        _sums = new double[evidence.Network.Count][];
        var relevant = new Relevant(evidence, options.Wanted, keepZeros: false, lump: false);
        if (!relevant.Possible)
            return;
        var rare = options.Rare is null ? [] : options.Rare.Where(v => relevant.Included[v]).ToList();
        while (!Cover(relevant, rare, 2 * options.RowBudget, out var tooLarge))
        {
            if (!AddRoots(relevant, rare, tooLarge.Variables))
                throw tooLarge;
        }

        foreach (var sums in _sums)
        {
            for (var i = 0; i < sums?.Length; i++)
                sums[i] /= _total;
        }
    }

    public IReadOnlyList<int> Rare { get; private set; } = [];

    public int Covered => _covered.Count;

    public bool Possible { get; private set; }

    public double LogEvidence { get; private set; } = double.NegativeInfinity;

    public double ErrorBound { get; private set; }

    /// <summary>The share of the rare roots' weight that was not looked at: d above.</summary>
    public double Omitted { get; private set; }

    /// <summary>Logarithm of L* above.</summary>
    public double LogLargest { get; private set; }

    public long Rows { get; private set; }

    public long Products { get; private set; }

    public int LargestTable { get; private set; }

    public bool TryMarginal(int node, [NotNullWhen(true)] out double[]? marginal)
    {
        marginal = _sums[node];
        return marginal is not null;
    }

    /// <summary>Draws from the covered part: an assignment in proportion to its weight with the evidence, then the rest exactly.</summary>
    public int[] Sample(SplitMix64 random, int count)
    {
        var drawn = new List<int>[_covered.Count];
        for (var i = 0; i < count; i++)
        {
            var target = random.NextUnit() * _total;
            var chosen = -1;
            for (var h = 0; h < _covered.Count && target >= 0; h++)
            {
                chosen = h;
                target -= Math.Exp(_covered[h].LogWeight - _reference);
            }

            (drawn[chosen] ??= []).Add(i);
        }

        var nodes = _evidence.Network.Count;
        var draws = new int[checked(count * nodes)];
        for (var h = 0; h < drawn.Length; h++)
        {
            if (drawn[h] is null)
                continue;
            var rows = new Sampling(Circuit.CompileOnce(Given(_covered[h].States), _options)).Draw(random, drawn[h].Count);
            for (var i = 0; i < drawn[h].Count; i++)
                rows.AsSpan(i * nodes, nodes).CopyTo(draws.AsSpan(drawn[h][i] * nodes));
        }

        return draws;
    }

    private static double Bound(double logLargest, double logCovered, double omitted)
    {
        if (omitted == 0)
            return 0;
        // d L* / (Z + d L*) = 1 / (1 + Z / (d L*)), which stays in range however small Z and L* are.
        return 1 / (1 + Math.Exp(logCovered - logLargest - Math.Log(omitted)));
    }

    /// <summary>Sums over assignments of these roots; false when a single one does not fit, with what was too large.</summary>
    private bool Cover(Relevant relevant, List<int> rare, long work, [NotNullWhen(false)] out InferenceException? tooLarge)
    {
        tooLarge = null;
        Rare = [.. rare];
        _covered.Clear();
        Array.Clear(_sums);
        _total = 0;
        _reference = LogEvidence = double.NegativeInfinity;
        var weights = new double[rare.Count][];
        LogLargest = 0;
        for (var i = 0; i < rare.Count; i++)
            LogLargest += Weights(rare[i], relevant, out weights[i]);
        LogLargest += LargestLikelihoods(relevant);
        Omitted = ErrorBound = 0;
        double mass = 0;
        var looked = 0;
        var until = Products + work;
        foreach (var (states, weight) in Assignments.InOrder(weights))
        {
            // Here there is one more to come, so what was left out counts.
            if (looked > 0)
            {
                Omitted = Math.Max(0, 1 - mass) + (looked + 4 * rare.Count + 8) * Rounding;
                ErrorBound = Bound(LogLargest, LogEvidence, Omitted);
                if (ErrorBound <= _options.TargetError || looked >= _options.Assignments || Products > until)
                    break;
            }

            try
            {
                Add(states);
            }
            catch (InferenceException e) when (e.Fault == InferenceFault.RowBudget)
            {
                tooLarge = e;
                return false;
            }

            looked++;
            mass += weight;
            Omitted = ErrorBound = 0;
        }

        Possible = LogEvidence > double.NegativeInfinity;
        if (!Possible && ErrorBound > 0)
            throw new InferenceException(InferenceFault.RowBudget, $"None of the {looked} likeliest assignments of the rare roots fits the findings; allow more assignments or rows.");
        return true;
    }

    /// <summary>
    /// Adds the rare roots that the table which did not fit had open, since knowing their states is what makes it smaller.
    /// When it had none, allows one assignment more rows, and when that is used up adds all rare roots. False when nothing
    /// can be changed any more.
    /// </summary>
    private bool AddRoots(Relevant relevant, List<int> rare, IReadOnlyList<int> variables)
    {
        var before = rare.Count;
        if (_chosenByCaller)
            variables = [];
        rare.AddRange(variables.Distinct().Where(v => !rare.Contains(v) && IsRare(v, relevant)));
        if (rare.Count > before)
            return true;
        if (_options.RowBudget < _most)
        {
            _options = _options with { RowBudget = Math.Min(_most, 4 * _options.RowBudget) };
            return true;
        }

        if (!_chosenByCaller)
            rare.AddRange(Enumerable.Range(0, _sums.Length).Where(v => !rare.Contains(v) && IsRare(v, relevant)));
        return rare.Count > before;
    }

    private bool IsRare(int node, Relevant relevant)
    {
        var network = _evidence.Network;
        if (!relevant.Included[node] || network.Parents(node).Length > 0 || _evidence.Forced(node) >= 0 || relevant.Fixed[node] >= 0)
            return false;
        return Array.Exists(network.TableOf(node).Values, p => p >= _options.RareMass);
    }

    /// <summary>Normalised weights of a root's states; returns the logarithm of what they were divided by.</summary>
    private double Weights(int root, Relevant relevant, out double[] weights)
    {
        var leaf = relevant.Leaves.Find(l => l.Node == root)!;
        if (_evidence.Network.Parents(root).Length > 0 && _evidence.Forced(root) < 0)
            throw new InferenceException(InferenceFault.Evidence, $"Node '{_evidence.Network.Name(root)}' cannot be enumerated as a rare root: it has parents.");
        weights = new double[relevant.States[root]];
        Array.Fill(weights, double.NegativeInfinity);
        var largest = double.NegativeInfinity;
        for (var r = 0; r < leaf.Index.Length; r++)
            largest = Math.Max(largest, weights[leaf.Index[r]] = Math.Log(leaf.Table.Values[r]) + leaf.LogAttached(_evidence, r));
        var total = 0.0;
        for (var s = 0; s < weights.Length; s++)
            total += weights[s] = Math.Exp(weights[s] - largest);
        for (var s = 0; s < weights.Length; s++)
            weights[s] /= total;
        return largest + Math.Log(total);
    }

    private double LargestLikelihoods(Relevant relevant)
    {
        var log = 0.0;
        foreach (var leaf in relevant.Leaves)
        {
            if (!Rare.Contains(leaf.Node))
                log += leaf.LogLargest(_evidence);
        }

        return log;
    }

    private Evidence Given(int[] states)
    {
        var given = _evidence.Where(_ => true);
        for (var i = 0; i < Rare.Count; i++)
            given.Observe(Rare[i], states[i]);
        return given;
    }

    private void Add(int[] states)
    {
        var circuit = Circuit.CompileOnce(Given(states), _options);
        Rows += circuit.Rows;
        Products += circuit.Products;
        LargestTable = Math.Max(LargestTable, circuit.LargestTable);
        if (!circuit.Possible)
            return;
        _covered.Add((states, circuit.LogEvidence));
        if (circuit.LogEvidence > _reference)
        {
            Rescale(Math.Exp(_reference - circuit.LogEvidence));
            _reference = circuit.LogEvidence;
        }

        var weight = Math.Exp(circuit.LogEvidence - _reference);
        _total += weight;
        LogEvidence = _reference + Math.Log(_total);
        for (var v = 0; v < _sums.Length; v++)
        {
            // A derived node may have its states merged in one assignment and not in the next.
            if ((_evidence.Network.Parents(v).Length > 0 && !_options.Wanted.Contains(v)) || !circuit.TryMarginal(v, out var marginal))
                continue;
            var sums = _sums[v] ??= new double[marginal.Length];
            for (var s = 0; s < sums.Length; s++)
                sums[s] += weight * marginal[s];
        }
    }

    private void Rescale(double factor)
    {
        _total *= factor;
        foreach (var sums in _sums)
        {
            for (var i = 0; i < sums?.Length; i++)
                sums[i] *= factor;
        }
    }
}

/// <summary>
/// What the error bound of a bounded sum was made of: d, the share of the rare roots' weight left out; the logarithms of
/// L*, the largest likelihood the evidence can have, and of Z, the probability of evidence and covered assignments.
/// </summary>
public sealed record BoundTerms(double Omitted, double LogLargest, double LogCovered);
