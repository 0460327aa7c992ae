namespace Undercowl.Inference.Formats;

/// <summary>
/// A network with its evidence turned into nodes and observed states alone, which is all that general formats can say:
/// a forced node loses its parents; a likelihood becomes an extra node with two states, child of what it depends on, whose
/// state 1 has that likelihood divided by its largest number, and which is observed in state 1. Posteriors stay the same;
/// the probability of the evidence is divided by the largest numbers, whose product is exp(<see cref="LogScale"/>).
/// </summary>
internal sealed class Written
{
    public Written(Evidence evidence)
    {
        var network = evidence.Network;
        for (var v = 0; v < network.Count; v++)
        {
            var names = new string[network.States(v)];
            for (var s = 0; s < names.Length; s++)
                names[s] = network.StateName(v, s);
            var forced = evidence.Forced(v);
            var table = forced < 0 ? network.DenseTable(v) : new double[names.Length];
            if (forced >= 0)
                table[forced] = 1;
            Nodes.Add(new WrittenNode(network.Name(v), names, forced >= 0 ? [] : network.Parents(v).ToArray(), table));
        }

        for (var f = 0; f < evidence.Count; f++)
            AddFinding(evidence.Findings[f], f);
    }

    public List<WrittenNode> Nodes { get; } = [];

    /// <summary>Observed state of each node that has one, by node.</summary>
    public SortedDictionary<int, int> Observed { get; } = [];

    public double LogScale { get; private set; }

    private void AddFinding(Finding finding, int number)
    {
        // A second, different observation of one node contradicts the first; as a likelihood it still can be written.
        if (finding.Observed >= 0 && Observed.TryAdd(finding.Scope[0], finding.Observed))
            return;
        var largest = 0.0;
        foreach (var x in finding.Dense)
            largest = Math.Max(largest, x);
        if (largest > 0)
            LogScale += Math.Log(largest);
        var table = new double[2 * finding.Dense.Length];
        for (var i = 0; i < finding.Dense.Length; i++)
        {
            var p = largest > 0 ? finding.Dense[i] / largest : 0;
            table[2 * i] = 1 - p;
            table[2 * i + 1] = p;
        }

        Observed.Add(Nodes.Count, 1);
        Nodes.Add(new WrittenNode($"finding {number}: {finding.Label}", ["no", "yes"], finding.Scope, table));
    }
}

/// <summary>One node: the table has its parents in order, the last fastest, and its own state fastest of all.</summary>
internal sealed record WrittenNode(string Name, string[] States, int[] Parents, double[] Table);
