namespace Undercowl.Inference;

/// <summary>
/// Draws joint states by running a propagated tape backwards: a summed row is one of the products that went into it, with
/// probability in proportion; leaf rows at the end give the states. Nodes left out of the tape are drawn forwards.
/// <para>
/// All draws go down together. Where some of them stand at one choice they are shuffled and shared out evenly (systematic
/// sampling: each alternative gets its share to within one), so each draw by itself follows the posterior exactly, while
/// numbers counted over all of them scatter less than those of independent draws.
/// </para>
/// </summary>
internal sealed class Sampling
{
    private readonly Circuit _circuit;
    private readonly int[] _first;
    private readonly int[] _left;
    private readonly int[] _right;
    private readonly Leaf?[] _leafOfRow;
    private double[] _weights = [];
    private int[] _chosen = [];

    public Sampling(Circuit circuit)
    {
        _circuit = circuit;
        var tape = circuit.Tape;
        _first = new int[tape.Rows + 1];
        _left = new int[tape.Products];
        _right = new int[tape.Products];
        _leafOfRow = new Leaf?[tape.Rows];
        foreach (var leaf in circuit.Leaves)
            Array.Fill(_leafOfRow, leaf, leaf.Table.Offset, leaf.Table.Count);
        foreach (var step in tape.Steps)
        {
            foreach (var row in step.Sum)
                _first[row + 1]++;
        }

        for (var r = 0; r < tape.Rows; r++)
            _first[r + 1] += _first[r];
        var next = _first.AsSpan(0, tape.Rows).ToArray();
        foreach (var step in tape.Steps)
        {
            for (var i = 0; i < step.Sum.Length; i++)
            {
                var k = next[step.Sum[i]]++;
                _left[k] = step.Left[i];
                _right[k] = step.Right[i];
            }
        }
    }

    /// <summary>Rows of a state for each node of the network, one row a draw.</summary>
    public int[] Draw(SplitMix64 random, int count)
    {
        var network = _circuit.Evidence.Network;
        var states = new int[checked(count * network.Count)];
        Array.Fill(states, -1);
        Backwards(random, count, states);
        for (var v = 0; v < network.Count; v++)
        {
            if (_circuit.Relevant.Fixed[v] is var known and >= 0)
            {
                for (var d = 0; d < count; d++)
                    states[d * network.Count + v] = known;
            }
            else if (!_circuit.Relevant.Included[v] || _circuit.Relevant.StandFor[v] is not null)
            {
                Forwards(random, v, count, states);
            }
        }

        return states;
    }

    private void Backwards(SplitMix64 random, int count, int[] states)
    {
        var nodes = _circuit.Evidence.Network.Count;
        var values = _circuit.Values;
        var waiting = new Waiting(_circuit.Tape.Rows);
        foreach (var root in _circuit.Tape.Roots)
        {
            for (var d = 0; d < count; d++)
                waiting.Add(root, d);
        }

        // What a row was made of was there before it.
        for (var row = _circuit.Tape.Rows - 1; row > Tape.One; row--)
        {
            if (waiting.Take(row, out var here) is not { } draws)
                continue;
            if (_leafOfRow[row] is { } leaf)
            {
                for (var i = 0; i < leaf.Table.Scope.Length; i++)
                {
                    var state = leaf.Table.Columns[i][row - leaf.Table.Offset];
                    var node = leaf.Table.Scope[i];
                    for (var d = 0; d < here; d++)
                        states[draws[d] * nodes + node] = state;
                }

                waiting.GiveBack(draws);
                continue;
            }

            var from = _first[row];
            var products = Weights(_first[row + 1] - from);
            for (var k = 0; k < products.Length; k++)
                products[k] = values[_left[from + k]] * values[_right[from + k]];
            Share(random, draws.AsSpan(0, here), products);
            for (var i = 0; i < here; i++)
            {
                var k = from + _chosen[i];
                if (_left[k] != Tape.One)
                    waiting.Add(_left[k], draws[i]);
                if (_right[k] != Tape.One)
                    waiting.Add(_right[k], draws[i]);
            }

            waiting.GiveBack(draws);
        }
    }

    /// <summary>
    /// Draws a node's state given its parents' states; of merged states, among those that the state drawn so far (the
    /// remaining one, when there was only one) stands for.
    /// </summary>
    private void Forwards(SplitMix64 random, int node, int count, int[] states)
    {
        var network = _circuit.Evidence.Network;
        var nodes = network.Count;
        var forced = _circuit.Evidence.Forced(node);
        var dense = network.DenseTable(node);
        var own = network.States(node);
        var standFor = _circuit.Relevant.StandFor[node];
        var merged = standFor is null ? -1 : _circuit.Relevant.First(node);
        var of = new int[count];
        if (forced < 0)
        {
            foreach (var p in network.Parents(node))
            {
                var size = network.States(p);
                for (int d = 0, at = p; d < count; d++, at += nodes)
                    of[d] = of[d] * size + states[at];
            }
        }

        // Draws that stand alike, by the parents' row and then by what was drawn so far.
        var kinds = dense.Length / own * (own + 1);
        for (int d = 0, at = node; d < count; d++, at += nodes)
            of[d] = of[d] * (own + 1) + 1 + (standFor is null ? -1 : states[at] >= 0 ? states[at] : merged);
        var first = new int[kinds + 1];
        for (var d = 0; d < count; d++)
            first[of[d] + 1]++;
        for (var kind = 0; kind < kinds; kind++)
            first[kind + 1] += first[kind];
        var next = first.AsSpan(0, kinds).ToArray();
        var sorted = new int[count];
        for (var d = 0; d < count; d++)
            sorted[next[of[d]]++] = d;
        for (var kind = 0; kind < kinds; kind++)
        {
            if (first[kind] == first[kind + 1])
                continue;
            var (row, drawn) = (kind / (own + 1), kind % (own + 1) - 1);
            var weights = Weights(own);
            for (var s = 0; s < own; s++)
                weights[s] = forced >= 0 ? (s == forced ? 1 : 0) : standFor is null || standFor[s] == drawn ? dense[row * own + s] : 0;
            var draws = sorted.AsSpan(first[kind]..first[kind + 1]);
            Share(random, draws, weights);
            for (var i = 0; i < draws.Length; i++)
                states[draws[i] * nodes + node] = _chosen[i];
        }
    }

    private Span<double> Weights(int count)
    {
        if (_weights.Length < count)
            _weights = new double[Math.Max(count, 2 * _weights.Length)];
        return _weights.AsSpan(0, count);
    }

    /// <summary>Shuffles the draws and shares them out among alternatives in proportion to their weights; what each gets is then chosen.</summary>
    private void Share(SplitMix64 random, Span<int> draws, ReadOnlySpan<double> weights)
    {
        if (_chosen.Length < draws.Length)
            _chosen = new int[Math.Max(draws.Length, 2 * _chosen.Length)];
        var chosen = _chosen;
        random.Shuffle(draws);

        var total = 0.0;
        var last = -1;
        for (var k = 0; k < weights.Length; k++)
        {
            total += weights[k];
            last = weights[k] > 0 ? k : last;
        }

        var step = total / draws.Length;
        var place = random.NextUnit() * step;
        var sum = 0.0;
        var next = 0;
        for (var k = 0; k <= last && next < draws.Length; k++)
        {
            sum += weights[k];
            // Rounding must not leave a draw without a place.
            for (; next < draws.Length && (place < sum || k == last); place += step)
                chosen[next++] = k;
        }
    }
}
