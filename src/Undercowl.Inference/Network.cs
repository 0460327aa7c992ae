namespace Undercowl.Inference;

/// <summary>
/// A discrete Bayesian network: nodes numbered 0 to <see cref="Count"/> - 1 in an order in which parents come before
/// children, each with named exclusive states and a conditional distribution given its parents. Immutable and safe to
/// share between threads. It holds no evidence: see <see cref="Evidence"/>. Made by <see cref="NetworkBuilder"/>.
/// </summary>
public sealed class Network
{
    private readonly string[] _names;
    private readonly string[][] _stateNames;
    private readonly int[][] _parents;
    private readonly Table[] _tables;

    internal Network(string[] names, string[][] stateNames, int[][] parents, Table[] tables)
    {
        _names = names;
        _stateNames = stateNames;
        _parents = parents;
        _tables = tables;
    }

    public int Count => _names.Length;

    public int States(int node) => _stateNames[node].Length;

    public string Name(int node) => _names[node];

    public string StateName(int node, int state) => _stateNames[node][state];

    /// <summary>Parents in the order in which they were given; empty for a root.</summary>
    public ReadOnlySpan<int> Parents(int node) => _parents[node];

    /// <summary>The node of this name, or -1.</summary>
    public int Find(string name) => Array.IndexOf(_names, name);

    /// <summary>
    /// The whole conditional distribution, zeros included: parents in order with the last fastest, the node's own state
    /// fastest of all. A fresh array of (product of all states) numbers.
    /// </summary>
    public double[] DenseTable(int node)
    {
        var table = _tables[node];
        var size = 1;
        foreach (var v in table.Scope)
            size = checked(size * States(v));
        var dense = new double[size];
        for (var r = 0; r < table.Count; r++)
        {
            var index = 0;
            for (var i = 0; i < table.Scope.Length; i++)
                index = index * States(table.Scope[i]) + table.Columns[i][r];
            dense[index] = table.Values[r];
        }

        return dense;
    }

    /// <summary>Rows over (parents in order, node itself), zeros absent.</summary>
    internal Table TableOf(int node) => _tables[node];
}
