namespace Undercowl.Inference;

/// <summary>
/// One of the tables that are multiplied: a node's conditional distribution (times the single-node likelihoods on it), or
/// a likelihood over several nodes. Knows how to fill in its numbers again when a likelihood changes.
/// </summary>
internal sealed class Leaf
{
    private double[] _mantissas = [];
    private int[] _exponents = [];

    public required Table Table { get; set; }

    /// <summary>The node whose distribution this is, or -1.</summary>
    public int Node { get; init; } = -1;

    /// <summary>The joint likelihood this is, or -1.</summary>
    public int Finding { get; init; } = -1;

    /// <summary>Each row's state of <see cref="Node"/>, or its index into the dense likelihood of <see cref="Finding"/>.</summary>
    public required int[] Index { get; set; }

    /// <summary>Single-node likelihoods multiplied into this distribution.</summary>
    public List<int> Attached { get; } = [];

    /// <summary>All findings in it.</summary>
    public IEnumerable<int> Findings => Finding >= 0 ? Attached.Append(Finding) : Attached;

    /// <summary>Keeps only these rows.</summary>
    public void Take(List<int> rows)
    {
        if (rows.Count == Table.Count)
            return;
        var chosen = rows.ToArray();
        var columns = Array.ConvertAll(Table.Columns, column => Array.ConvertAll(chosen, r => column[r]));
        var values = Table.Values.Length == 0 ? [] : Array.ConvertAll(chosen, r => Table.Values[r]);
        Index = Array.ConvertAll(chosen, r => Index[r]);
        Table = new Table(Table.Scope, columns, chosen.Length, values);
    }

    /// <summary>
    /// Writes the numbers of all rows, scaled by a power of two to have their largest in [1, 2); returns the exponent
    /// taken out, 0 when every row is zero.
    /// </summary>
    public int Fill(double[] values, double[][] likelihoods)
    {
        int offset = Table.Offset, end = offset + Table.Count;
        if (Finding >= 0)
        {
            var dense = likelihoods[Finding];
            for (var r = 0; r < Index.Length; r++)
                values[offset + r] = dense[Index[r]];
        }
        else
        {
            Table.Values.CopyTo(values, offset);
            if (Attached.Count > 0)
                return Multiply(values, likelihoods) + Scaling.Normalise(values, offset, end, out _);
        }

        return Scaling.Normalise(values, offset, end, out _);
    }

    /// <summary>
    /// Logarithm of the largest that the likelihoods in this table can be; where the node's state is observed, of that times the
    /// distribution.
    /// </summary>
    public double LogLargest(Evidence evidence)
    {
        if (Node >= 0 && Attached.Count == 0)
            return 0;
        var observed = Attached.Exists(f => evidence.Findings[f].Observed >= 0);
        var largest = double.NegativeInfinity;
        for (var r = 0; r < Index.Length; r++)
        {
            var x = Finding >= 0 ? Math.Log(evidence.Findings[Finding].Dense[Index[r]]) : LogAttached(evidence, r);
            largest = Math.Max(largest, observed ? x + Math.Log(Table.Values[r]) : x);
        }

        return largest;
    }

    /// <summary>Logarithm of the product of the attached likelihoods for a row.</summary>
    public double LogAttached(Evidence evidence, int row)
    {
        var sum = 0.0;
        foreach (var f in Attached)
            sum += Math.Log(evidence.Findings[f].Dense[Index[row]]);
        return sum;
    }

    /// <summary>
    /// Multiplies the rows by the product of the attached likelihoods, kept as mantissa and exponent for each state: a
    /// thousand readings for a state and a thousand against it must not meet at zero. Returns the exponent taken out.
    /// </summary>
    private int Multiply(double[] values, double[][] likelihoods)
    {
        var states = likelihoods[Attached[0]].Length;
        if (_mantissas.Length != states)
        {
            _mantissas = new double[states];
            _exponents = new int[states];
        }

        var largest = int.MinValue;
        for (var s = 0; s < states; s++)
        {
            var mantissa = 1.0;
            var exponent = 0;
            foreach (var f in Attached)
            {
                mantissa *= likelihoods[f][s];
                if (mantissa == 0)
                    break;
                var e = Math.ILogB(mantissa);
                mantissa = Math.ScaleB(mantissa, -e);
                exponent += e;
            }

            _mantissas[s] = mantissa;
            _exponents[s] = exponent;
            if (mantissa > 0 && exponent > largest)
                largest = exponent;
        }

        if (largest == int.MinValue)
            largest = 0;
        for (var s = 0; s < states; s++)
            _mantissas[s] = Math.ScaleB(_mantissas[s], _exponents[s] - largest);
        var offset = Table.Offset;
        for (var r = 0; r < Index.Length; r++)
            values[offset + r] *= _mantissas[Index[r]];
        return largest;
    }
}
