namespace Undercowl.Inference;

/// <summary>The joint distribution of a few nodes given evidence, as the rows that are not zero; they sum to 1.</summary>
internal sealed class JointRows
{
    private JointRows(Network network, int[] nodes, int[][] states, double[] probabilities)
    {
        Network = network;
        Nodes = nodes;
        States = states;
        Probabilities = probabilities;
    }

    public Network Network { get; }

    public int[] Nodes { get; }

    /// <summary>States[i][r] is the state of Nodes[i] in row r.</summary>
    public int[][] States { get; }

    public double[] Probabilities { get; }

    public static JointRows Of(Evidence evidence, int[] nodes, EliminationOptions options)
    {
        var circuit = Circuit.CompileKept(evidence, options with { Wanted = nodes }, nodes);
        if (!circuit.Possible)
            throw new InferenceException(InferenceFault.Impossible, "The findings cannot all be true, so nothing has a probability given them; withdraw one that Conflict names.");
        var table = circuit.Kept;
        var rows = table?.Count ?? 1;
        var probabilities = new double[rows];
        Array.Fill(probabilities, 1);
        if (table is not null)
            Array.Copy(circuit.Values, table.Offset, probabilities, 0, rows);
        var total = 0.0;
        foreach (var p in probabilities)
            total += p;
        for (var r = 0; r < rows; r++)
            probabilities[r] /= total;
        var states = Array.ConvertAll(nodes, v =>
        {
            var column = new int[rows];
            if (circuit.Relevant.Fixed[v] is var known and >= 0)
                Array.Fill(column, known);
            else
                Array.ConvertAll(table!.ColumnOf(v), s => (int)s).CopyTo(column, 0);
            return column;
        });
        return new JointRows(evidence.Network, nodes, states, probabilities);
    }

    public double[] Dense()
    {
        var size = 1L;
        foreach (var v in Nodes)
            size *= Network.States(v);
        if (size > Array.MaxLength)
            throw new InferenceException(InferenceFault.RowBudget, "These nodes have too many joint states for one table; ask for fewer at a time.");
        var dense = new double[size];
        for (var r = 0; r < Probabilities.Length; r++)
        {
            var index = 0;
            for (var i = 0; i < Nodes.Length; i++)
                index = index * Network.States(Nodes[i]) + States[i][r];
            dense[index] += Probabilities[r];
        }

        return dense;
    }
}
