namespace Undercowl.Inference;

/// <summary>
/// Draws joint states by running a propagated tape backwards: a summed row is one of the products that went into it, with
/// probability in proportion; leaf rows at the end give the states. Nodes left out of the tape are drawn forwards.
/// </summary>
internal sealed class Sampling
{
    private readonly Circuit _circuit;
    private readonly int[] _first;
    private readonly int[] _left;
    private readonly int[] _right;
    private readonly Leaf?[] _leafOfRow;
    private readonly double[]?[] _dense;
    private readonly Stack<int> _open = new();

    public Sampling(Circuit circuit)
    {
        _circuit = circuit;
        var tape = circuit.Tape;
        _first = new int[tape.Rows + 1];
        _left = new int[tape.Products];
        _right = new int[tape.Products];
        _leafOfRow = new Leaf?[tape.Rows];
        _dense = new double[circuit.Evidence.Network.Count][];
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

    public void Draw(SplitMix64 random, Span<int> states)
    {
        var network = _circuit.Evidence.Network;
        states.Fill(-1);
        foreach (var root in _circuit.Tape.Roots)
            _open.Push(root);
        while (_open.TryPop(out var row))
        {
            if (_leafOfRow[row] is { } leaf)
            {
                for (var i = 0; i < leaf.Table.Scope.Length; i++)
                    states[leaf.Table.Scope[i]] = leaf.Table.Columns[i][row - leaf.Table.Offset];
                continue;
            }

            if (row == Tape.One)
                continue;
            var chosen = Choose(random, row);
            _open.Push(_left[chosen]);
            _open.Push(_right[chosen]);
        }

        for (var v = 0; v < network.Count; v++)
        {
            if (_circuit.Relevant.Fixed[v] is var known and >= 0)
                states[v] = known;
            else if (!_circuit.Relevant.Included[v])
                states[v] = Forward(random, v, states, null);
            else if (_circuit.Relevant.StandFor[v] is { } standFor)
                states[v] = Forward(random, v, states, standFor);
        }
    }

    private int Choose(SplitMix64 random, int row)
    {
        var values = _circuit.Values;
        var total = 0.0;
        for (var k = _first[row]; k < _first[row + 1]; k++)
            total += values[_left[k]] * values[_right[k]];
        var target = random.NextUnit() * total;
        var chosen = -1;
        for (var k = _first[row]; k < _first[row + 1]; k++)
        {
            var share = values[_left[k]] * values[_right[k]];
            if (share == 0)
                continue;
            chosen = k;
            target -= share;
            if (target < 0)
                break;
        }

        return chosen;
    }

    /// <summary>
    /// Draws a node's state given its parents' states; of merged states, among those that the state drawn so far (the
    /// remaining one, when there was only one) stands for.
    /// </summary>
    private int Forward(SplitMix64 random, int node, ReadOnlySpan<int> states, int[]? standFor)
    {
        var network = _circuit.Evidence.Network;
        if (_circuit.Evidence.Forced(node) is var forced and >= 0)
            return forced;
        var dense = _dense[node] ??= network.DenseTable(node);
        var index = 0;
        foreach (var p in network.Parents(node))
            index = index * network.States(p) + states[p];
        var row = dense.AsSpan(index * network.States(node), network.States(node));
        var drawn = states[node] >= 0 ? states[node] : _circuit.Relevant.First(node);
        bool Fits(int s) => standFor is null || standFor[s] == drawn;
        var total = 0.0;
        for (var s = 0; s < row.Length; s++)
            total += Fits(s) ? row[s] : 0;
        var target = random.NextUnit() * total;
        var chosen = -1;
        for (var s = 0; s < row.Length; s++)
        {
            if (!Fits(s) || row[s] == 0)
                continue;
            chosen = s;
            target -= row[s];
            if (target < 0)
                break;
        }

        return chosen;
    }
}
