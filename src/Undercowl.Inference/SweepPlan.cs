namespace Undercowl.Inference;

/// <summary>
/// Sums a network of many like parts one part after another. The caller names stages (<see cref="EliminationOptions.Stages"/>):
/// nodes that gather part 1, then part 2, and so on. What most stages come from is summed first and gives one table, the front;
/// then each stage's own nodes are summed by themselves, guided by the joint states that occur in the front, and multiplied into
/// it. After each stage, and where the front grows too large within one, the lightest rows of the front are shed; what they can have
/// weighed is counted.
/// <para>
/// The bound. The front is the sum of a product of distributions and likelihoods. Let F(r) be a row of it, and L* the product of the largest
/// numbers of the likelihoods not yet multiplied in. All that follows row r multiplies it by likelihoods, together at most L*, and
/// by distributions of nodes given their parents: of a node that is open in the front, its row has fixed the state, and the number
/// is at most 1; of the others the sum is at most 1, children summed first. So shedding a set of rows loses
/// at most L* times their sum. Losses of several stages add up to R, as later fronts only get smaller by what was shed. With Z
/// the probability of the evidence that was kept, 0 &lt;= R' &lt;= R for what was really lost, and no marginal is wrong by more than
/// R / (Z + R), for the reason given at <see cref="BoundedSum"/> under (3).
/// </para>
/// </summary>
internal sealed class SweepPlan
{
    /// <summary>Rows lighter than this part of the front are shed even when there is room for them.</summary>
    private static readonly double LogTrifle = Math.Log(1e-16);

    /// <summary>Within a stage the front may grow to so many times the joint states that are carried to the next; then a quarter of that is kept.</summary>
    private const int Slack = 16;

    /// <summary>
    /// Before there is a front to guide it, a variable is left for the front where eliminating it is estimated to give more rows than 2
    /// to this power.
    /// </summary>
    private const double Narrow = 14;

    private readonly TableSet _tables;
    private readonly IReadOnlyList<Leaf> _leaves;
    private readonly Evidence _evidence;
    private readonly RunningValues _values;
    private readonly PartialSum _sum;
    private readonly Prospects _prospects;
    private readonly int _beam;
    private readonly SweepWay _way;
    private readonly bool[] _gathers;
    private readonly int[] _blockOf;
    private readonly int[] _blockOfLeaf;
    private readonly int[] _exponents;

    public SweepPlan(TableSet tables, IReadOnlyList<Leaf> leaves, int[] states, Evidence evidence, Tape tape, Likelihoods likelihoods, EliminationOptions options, SweepWay way)
    {
        (_tables, _leaves, _evidence, _beam, _way) = (tables, leaves, evidence, options.Beam, way);
        _values = new RunningValues(tape);
        _exponents = [.. leaves.Select(l => l.Fill(_values.Room(), likelihoods.Numbers) + l.Findings.Sum(f => likelihoods.Exponents[f]))];
        var nodes = evidence.Network.Count;
        _gathers = new bool[nodes];
        foreach (var v in options.Stages.SelectMany(s => s))
            _gathers[v] = true;
        _blockOf = new int[nodes];
        _blockOfLeaf = new int[leaves.Count];
        AssignBlocks(options.Stages);
        _prospects = new Prospects(evidence, leaves, states, _gathers);
        _sum = new PartialSum(tables, _values, way.Weighted);
    }

    /// <summary>Logarithm of the most that the rows shed can have weighed, R above; minus infinity when none was.</summary>
    public double LogLost { get; private set; } = double.NegativeInfinity;

    /// <summary>Logarithm of what the rows shed weighed at the time, F above, without the findings that were to come.</summary>
    public double LogShed { get; private set; } = double.NegativeInfinity;

    public void Run()
    {
        for (var i = 0; i < _leaves.Count; i++)
        {
            if (_leaves[i].Table.Scope.Length == 0)
                _sum.Numbers.Add(new Part(_leaves[i].Table, [i], _exponents[i]));
        }

        Part? front = null;
        for (var block = 0; block <= _blockOfLeaf.Max() && !_tables.Empty; block++)
        {
            var own = new List<Part>();
            var gathering = new List<Part>();
            for (var i = 0; i < _leaves.Count; i++)
            {
                if (_blockOfLeaf[i] == block && _leaves[i].Table.Scope.Length > 0)
                    (Array.Exists(_leaves[i].Table.Scope, v => _gathers[v]) ? gathering : own).Add(new Part(_leaves[i].Table, [i], _exponents[i]));
            }

            _sum.Run(own, front?.Table, front is null ? Narrow : _way.Widest);
            while (own.Count > 0 && !_tables.Empty)
            {
                var next = own.MinBy(p => _tables.Estimate(front is null ? [p.Table] : [front.Table, p.Table], out _))!;
                own.Remove(next);
                front = Into(front, next);
                if (front?.Table.Count > _beam * Slack && !_tables.Empty)
                    front = Shed(front, _beam * Slack / 4);
            }

            foreach (var part in gathering)
            {
                if (!_tables.Empty)
                    front = Into(front, part);
            }

            if (front is not null && !_tables.Empty)
                front = Shed(front, _beam);
        }
    }

    /// <summary>Null when nothing is open any more: what is left is a number.</summary>
    private Part? Into(Part? front, Part next)
    {
        var joined = _sum.Join(front ?? next, front is null ? null : next);
        if (joined.Table.Scope.Length > 0)
            return joined;
        _sum.Numbers.Add(joined);
        return null;
    }

    private Part Shed(Part front, int beam)
    {
        var absorbed = new bool[_leaves.Count];
        foreach (var i in _sum.Numbers.Append(front).SelectMany(p => p.Leaves))
            absorbed[i] = true;
        // A row that lies below the range of a double is not nothing.
        var soFar = Array.ConvertAll(_values.Of(front.Table).ToArray(), v => Math.Log(Math.Max(v, double.Epsilon)));
        var weights = (double[])soFar.Clone();
        var logMost = 0.0;
        for (var i = 0; i < _leaves.Count; i++)
        {
            if (!absorbed[i])
                logMost += _prospects.Weigh(_leaves[i], front.Table, weights);
        }

        var order = new int[weights.Length];
        for (var r = 0; r < order.Length; r++)
            order[r] = r;
        Array.Sort(order, (x, y) => weights[y].CompareTo(weights[x]) is var c && c != 0 ? c : x.CompareTo(y));
        // Summed from the lightest, so that nothing is lost in rounding.
        var total = double.NegativeInfinity;
        for (var i = order.Length - 1; i >= 0; i--)
            total = Add(total, weights[order[i]]);
        double lost = double.NegativeInfinity, shed = lost;
        var keep = order.Length;
        while (keep > 1 && (keep > beam || weights[order[keep - 1]] < LogTrifle + total))
        {
            lost = Add(lost, weights[order[--keep]]);
            shed = Add(shed, soFar[order[keep]]);
        }

        if (keep == order.Length)
            return front;
        // What is summed to a number already multiplies every row.
        var scale = (front.Exponent + _sum.Numbers.Sum(p => p.Exponent)) * Math.Log(2) + LogScalars();
        LogLost = Add(LogLost, lost + scale + logMost);
        LogShed = Add(LogShed, shed + scale);
        var kept = order[..keep];
        Array.Sort(kept);
        var before = _values.Exponent;
        var table = _tables.Keep(front.Table, kept);
        _values.Evaluate();
        return front with { Table = table, Exponent = front.Exponent + _values.Exponent - before };
    }

    /// <summary>Parts that hang together with nothing else are summed already and multiply every row.</summary>
    private double LogScalars()
    {
        var log = 0.0;
        foreach (var scalar in _tables.Scalars)
            log += Math.Log(_values.Of(scalar)[0]);
        return log;
    }

    private static double Add(double a, double b) =>
        double.IsNegativeInfinity(a) ? b : double.IsNegativeInfinity(b) ? a : Math.Max(a, b) + Math.Log(1 + Math.Exp(-Math.Abs(a - b)));

    /// <summary>
    /// Block 0 is what most stages come from; then each node goes with the first stage that it leads to, and what leads to none
    /// with the last of its parents. No node goes before its parents, so after each block the front is closed under parents.
    /// </summary>
    private void AssignBlocks(IReadOnlyList<IReadOnlyList<int>> stages)
    {
        var network = _evidence.Network;
        var nodes = network.Count;
        const int None = -1;
        Array.Fill(_blockOf, None);
        var leadsTo = new int[nodes];
        var seen = new int[nodes];
        for (var i = 0; i < stages.Count; i++)
        {
            var open = new Stack<int>(stages[i]);
            while (open.TryPop(out var v))
            {
                if (seen[v] == i + 1)
                    continue;
                seen[v] = i + 1;
                leadsTo[v]++;
                if (_blockOf[v] == None)
                    _blockOf[v] = i + 1;
                if (_evidence.Forced(v) >= 0)
                    continue;
                foreach (var p in network.Parents(v))
                {
                    // An earlier stage's node stands for all that led to it.
                    if (!_gathers[p] || _blockOf[p] == None || stages[i].Contains(p))
                        open.Push(p);
                }
            }
        }

        var most = Math.Max(2, stages.Count / 2);
        for (var v = 0; v < nodes; v++)
        {
            if (leadsTo[v] >= most && !_gathers[v])
                _blockOf[v] = 0;
        }

        Lower(network, None);
        for (var v = 0; v < nodes; v++)
        {
            var last = _blockOf[v];
            if (_evidence.Forced(v) < 0)
            {
                foreach (var p in network.Parents(v))
                    last = Math.Max(last, _blockOf[p]);
            }

            _blockOf[v] = Math.Max(last, 0);
        }

        for (var i = 0; i < _leaves.Count; i++)
        {
            // A table without variables is a number, and there from the beginning.
            var leaf = _leaves[i];
            _blockOfLeaf[i] = leaf.Table.Scope.Length == 0 ? 0 : leaf.Node >= 0 ? _blockOf[leaf.Node] : leaf.Table.Scope.Max(v => _blockOf[v]);
        }
    }

    /// <summary>A root that leads to no stage goes with the first table that reads it.</summary>
    private void Lower(Network network, int none)
    {
        var first = new int[network.Count];
        Array.Fill(first, int.MaxValue);
        foreach (var leaf in _leaves)
        {
            var block = leaf.Table.Scope.Select(v => _blockOf[v]).DefaultIfEmpty(none).Max();
            foreach (var v in leaf.Table.Scope)
            {
                if (v != leaf.Node || leaf.Table.Scope.Length > 1)
                    first[v] = Math.Min(first[v], block);
            }
        }

        for (var v = 0; v < network.Count; v++)
        {
            if (_blockOf[v] == none && network.Parents(v).IsEmpty && first[v] is >= 0 and < int.MaxValue)
                _blockOf[v] = first[v];
        }
    }
}

/// <summary>
/// What the error bound of a sum stage by stage was made of, as logarithms: what was left out as it stood then; that times the
/// most the findings still to come can make of it (R); and the probability of the evidence that was kept (Z).
/// </summary>
public sealed record SweptTerms(double LogShed, double LogLost, double LogCovered);
