namespace Undercowl.Inference;

/// <summary>
/// The part of a network that bears on a question, with the evidence laid in: nodes that neither carry evidence, nor are
/// asked for, nor lead to either are left out; forced nodes lose their parents; rows that the evidence rules out are
/// dropped, again and again until nothing more follows; a node left with one state is a constant and leaves every scope.
/// </summary>
internal sealed class Relevant
{
    /// <summary>
    /// <paramref name="keepZeros"/> keeps likelihood entries of zero as rows, for callers that will change the numbers;
    /// <paramref name="lump"/> merges states that nothing tells apart.
    /// </summary>
    public Relevant(Evidence evidence, IReadOnlyList<int> wanted, bool keepZeros, bool lump)
    {
        var network = evidence.Network;
        States = new int[network.Count];
        for (var v = 0; v < network.Count; v++)
            States[v] = network.States(v);
        Included = Ancestors(evidence, wanted);
        _allowed = new bool[network.Count][];
        for (var v = 0; v < network.Count; v++)
        {
            _allowed[v] = new bool[States[v]];
            Array.Fill(_allowed[v], true);
        }

        for (var f = 0; f < evidence.Count; f++)
            Restrict(evidence.Findings[f], keepZeros);
        Collect(evidence, keepZeros);
        Fixed = new int[network.Count];
        Array.Fill(Fixed, -1);
        Possible = Propagate();
        StandFor = new int[network.Count][];
        if (!Possible)
            return;
        DropConstants();
        if (lump)
            Lump(evidence, wanted, keepZeros);
    }

    private readonly bool[][] _allowed;

    public int[] States { get; }

    public bool[] Included { get; }

    /// <summary>The only state left to a node, or -1.</summary>
    public int[] Fixed { get; }

    public List<Leaf> Leaves { get; } = [];

    /// <summary>For a node with merged states: the state that stands for each; null for other nodes.</summary>
    public int[]?[] StandFor { get; private set; }

    /// <summary>False when the evidence was found contradictory already; true promises nothing.</summary>
    public bool Possible { get; }

    public int Remaining(int node)
    {
        var n = 0;
        foreach (var ok in _allowed[node])
            n += ok ? 1 : 0;
        return n;
    }

    /// <summary>The first state left to a node.</summary>
    public int First(int node) => Array.IndexOf(_allowed[node], true);

    private static bool[] Ancestors(Evidence evidence, IReadOnlyList<int> wanted)
    {
        var included = new bool[evidence.Network.Count];
        foreach (var f in evidence.Findings)
        {
            foreach (var v in f.Scope)
                included[v] = true;
        }

        foreach (var v in wanted)
            included[v] = true;
        // Parents have lower numbers, so one sweep from the end reaches every ancestor.
        for (var v = included.Length - 1; v >= 0; v--)
        {
            if (!included[v] || evidence.Forced(v) >= 0)
                continue;
            foreach (var p in evidence.Network.Parents(v))
                included[p] = true;
        }

        return included;
    }

    private void Restrict(Finding finding, bool keepZeros)
    {
        if (finding.Scope.Length > 1 || (finding.Observed < 0 && keepZeros))
            return;
        var allowed = _allowed[finding.Scope[0]];
        for (var s = 0; s < allowed.Length; s++)
            allowed[s] &= finding.Dense[s] > 0;
    }

    private void Collect(Evidence evidence, bool keepZeros)
    {
        var ofNode = new Leaf?[States.Length];
        for (var v = 0; v < States.Length; v++)
        {
            if (!Included[v])
                continue;
            var forced = evidence.Forced(v);
            var table = forced >= 0 ? new Table([v], [[(byte)forced]], 1, [1]) : evidence.Network.TableOf(v);
            Leaves.Add(ofNode[v] = new Leaf { Table = table, Node = v, Index = Widen(table.Columns[^1], table.Count) });
        }

        for (var f = 0; f < evidence.Count; f++)
        {
            var finding = evidence.Findings[f];
            if (finding.Scope.Length == 1)
                ofNode[finding.Scope[0]]!.Attached.Add(f);
            else
                Leaves.Add(JointLeaf(f, finding, keepZeros));
        }
    }

    private static int[] Widen(byte[] column, int count)
    {
        var wide = new int[count];
        for (var r = 0; r < count; r++)
            wide[r] = column[r];
        return wide;
    }

    private Leaf JointLeaf(int number, Finding finding, bool keepZeros)
    {
        var index = new List<int>();
        for (var i = 0; i < finding.Dense.Length; i++)
        {
            if (keepZeros || finding.Dense[i] > 0)
                index.Add(i);
        }

        var columns = new byte[finding.Scope.Length][];
        var stride = 1;
        for (var i = finding.Scope.Length - 1; i >= 0; i--)
        {
            var states = States[finding.Scope[i]];
            columns[i] = new byte[index.Count];
            for (var r = 0; r < index.Count; r++)
                columns[i][r] = (byte)(index[r] / stride % states);
            stride *= states;
        }

        return new Leaf { Table = new Table(finding.Scope, columns, index.Count, []), Finding = number, Index = [.. index] };
    }

    /// <summary>Drops rows and states that have become impossible until nothing changes; false when a node has none left.</summary>
    private bool Propagate()
    {
        var leavesOf = new List<int>[States.Length];
        for (var i = 0; i < Leaves.Count; i++)
        {
            foreach (var v in Leaves[i].Table.Scope)
                (leavesOf[v] ??= []).Add(i);
        }

        var queue = new Queue<int>();
        var waiting = new bool[Leaves.Count];
        for (var i = 0; i < Leaves.Count; i++)
        {
            queue.Enqueue(i);
            waiting[i] = true;
        }

        while (queue.TryDequeue(out var i))
        {
            waiting[i] = false;
            var leaf = Leaves[i];
            Filter(leaf);
            if (leaf.Table.Count == 0)
                return false;
            foreach (var v in leaf.Table.Scope)
            {
                if (!Narrow(leaf.Table, v))
                    continue;
                foreach (var other in leavesOf[v])
                {
                    if (other == i || waiting[other])
                        continue;
                    waiting[other] = true;
                    queue.Enqueue(other);
                }
            }
        }

        for (var v = 0; v < States.Length; v++)
        {
            if (Included[v] && Remaining(v) == 1)
                Fixed[v] = Array.IndexOf(_allowed[v], true);
        }

        return true;
    }

    private void Filter(Leaf leaf)
    {
        var table = leaf.Table;
        var keep = new List<int>(table.Count);
        for (var r = 0; r < table.Count; r++)
        {
            var ok = true;
            for (var c = 0; ok && c < table.Scope.Length; c++)
                ok = _allowed[table.Scope[c]][table.Columns[c][r]];
            if (ok)
                keep.Add(r);
        }

        leaf.Take(keep);
    }

    private bool Narrow(Table table, int variable)
    {
        var allowed = _allowed[variable];
        var seen = new bool[allowed.Length];
        var column = table.ColumnOf(variable);
        for (var r = 0; r < table.Count; r++)
            seen[column[r]] = true;
        var changed = false;
        for (var s = 0; s < allowed.Length; s++)
        {
            changed |= allowed[s] && !seen[s];
            allowed[s] &= seen[s];
        }

        return changed;
    }

    private void DropConstants()
    {
        foreach (var leaf in Leaves)
        {
            var table = leaf.Table;
            var open = Array.FindAll(table.Scope, v => Fixed[v] < 0);
            // A fresh table in any case: its place on a tape must not be shared with the network's own.
            leaf.Table = new Table(open, Array.ConvertAll(open, table.ColumnOf), table.Count, table.Values);
        }
    }

    private void Lump(Evidence evidence, IReadOnlyList<int> wanted, bool numbersChange)
    {
        var keep = new bool[States.Length];
        foreach (var v in wanted)
            keep[v] = true;
        for (var f = 0; f < evidence.Count; f++)
        {
            var finding = evidence.Findings[f];
            foreach (var v in finding.Scope)
                keep[v] |= numbersChange ? finding.Observed < 0 : finding.Scope.Length > 1;
        }

        StandFor = new Lumping(Leaves, States, _allowed, evidence.Findings).Run(keep);
        for (var v = 0; v < States.Length; v++)
        {
            for (var s = 0; s < StandFor[v]?.Length; s++)
                _allowed[v][s] &= StandFor[v]![s] == s;
        }

        foreach (var leaf in Leaves)
        {
            var open = Array.FindAll(leaf.Table.Scope, v => Remaining(v) > 1);
            leaf.Table = new Table(open, Array.ConvertAll(open, leaf.Table.ColumnOf), leaf.Table.Count, leaf.Table.Values);
        }
    }
}
