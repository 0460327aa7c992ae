namespace Undercowl.Inference.Tests;

/// <summary>
/// The slow obvious twin: every joint state of the network, its probability multiplied out from the dense tables and the
/// findings' numbers. Shares nothing with the engine but the network's description.
/// </summary>
internal sealed class FullJoint
{
    public FullJoint(Case c)
    {
        var network = c.Network;
        Nodes = network.Count;
        States = new int[Nodes];
        var size = 1;
        for (var v = 0; v < Nodes; v++)
            size *= States[v] = network.States(v);
        Weights = new double[size];
        var tables = new double[Nodes][];
        for (var v = 0; v < Nodes; v++)
            tables[v] = network.DenseTable(v);
        var states = new int[Nodes];
        for (var i = 0; i < size; i++)
        {
            Decode(i, states);
            var p = 1.0;
            for (var v = 0; p > 0 && v < Nodes; v++)
                p *= c.Forced.TryGetValue(v, out var f) ? (states[v] == f ? 1 : 0) : Entry(network, tables[v], v, states);
            foreach (var (scope, dense) in c.Likelihoods)
            {
                var index = 0;
                foreach (var v in scope)
                    index = index * States[v] + states[v];
                p *= dense[index];
            }

            Weights[i] = p;
            Total += p;
        }
    }

    public int Nodes { get; }

    public int[] States { get; }

    public double[] Weights { get; }

    public double Total { get; }

    public double[] Joint(params int[] nodes)
    {
        var size = 1;
        foreach (var v in nodes)
            size *= States[v];
        var joint = new double[size];
        var states = new int[Nodes];
        for (var i = 0; i < Weights.Length; i++)
        {
            Decode(i, states);
            var index = 0;
            foreach (var v in nodes)
                index = index * States[v] + states[v];
            joint[index] += Weights[i] / Total;
        }

        return joint;
    }

    public void Decode(int index, int[] states)
    {
        for (var v = Nodes - 1; v >= 0; v--)
        {
            states[v] = index % States[v];
            index /= States[v];
        }
    }

    private static double Entry(Network network, double[] table, int node, int[] states)
    {
        var index = 0;
        foreach (var p in network.Parents(node))
            index = index * network.States(p) + states[p];
        return table[index * network.States(node) + states[node]];
    }
}

/// <summary>A network with findings, kept both as the engine's evidence and as plain numbers for the twin.</summary>
internal sealed class Case(Network network)
{
    public Network Network { get; } = network;

    public Evidence Evidence { get; } = new(network);

    public List<(int[] Scope, double[] Dense)> Likelihoods { get; } = [];

    public Dictionary<int, int> Forced { get; } = [];

    public void Observe(int node, int state, string? label = null)
    {
        Evidence.Observe(node, state, label);
        var dense = new double[Network.States(node)];
        dense[state] = 1;
        Likelihoods.Add(([node], dense));
    }

    public void Likelihood(int[] scope, double[] dense, string? label = null)
    {
        Evidence.Likelihood(scope, dense, label);
        Likelihoods.Add((scope, dense));
    }

    public void Intervene(int node, int state)
    {
        Evidence.Intervene(node, state);
        Forced[node] = state;
    }
}
