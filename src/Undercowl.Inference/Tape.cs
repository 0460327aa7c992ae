namespace Undercowl.Inference;

/// <summary>
/// The record of one elimination: for every product of two rows, where its factors and its sum lie in one flat array of
/// values. Replaying it forwards gives the probability of the evidence; replaying it backwards gives the derivative of
/// that with respect to every row there ever was, and a row times its derivative is the row's share of the whole. Zeros
/// need no care (nothing is divided), and a replay with other numbers costs no structural work and no allocation.
/// </summary>
internal sealed class Tape
{
    /// <summary>Row 0 is the constant one: the right-hand side of steps that only sum.</summary>
    public const int One = 0;

    private readonly List<Step> _steps = [];
    private readonly List<int> _roots = [];

    public int Rows { get; private set; } = 1;

    public long Products { get; private set; }

    public int LargestTable { get; private set; }

    public IReadOnlyList<Step> Steps => _steps;

    /// <summary>Rows whose product is the probability of the evidence: one for each unconnected part.</summary>
    public IReadOnlyList<int> Roots => _roots;

    public void Place(Table table)
    {
        table.Offset = Rows;
        Rows = checked(Rows + table.Count);
        LargestTable = Math.Max(LargestTable, table.Count);
    }

    public void Add(Step step)
    {
        _steps.Add(step);
        Products += step.Left.Length;
    }

    public void AddRoot(Table scalar) => _roots.Add(scalar.Offset);

    /// <summary>
    /// Fills in the sums. Every step's results are scaled by a power of two (exact in binary) to have their largest in
    /// [1, 2); the sum of the exponents is returned, so that totals of 1e-3000 or 1e44 do not leave the range of a double.
    /// </summary>
    public long Up(double[] values, double[] scales)
    {
        values[One] = 1;
        long exponents = 0;
        for (var s = 0; s < _steps.Count; s++)
            exponents += Up(_steps[s], values, out scales[s]);
        return exponents;
    }

    /// <summary>Fills in the sums of one step; returns the exponent taken out of them.</summary>
    public static int Up(Step step, double[] values, out double scale)
    {
        int[] left = step.Left, right = step.Right, sum = step.Sum;
        Array.Clear(values, step.Start, step.End - step.Start);
        for (var i = 0; i < left.Length && i < right.Length && i < sum.Length; i++)
            values[sum[i]] += values[left[i]] * values[right[i]];
        return Scaling.Normalise(values, step.Start, step.End, out scale);
    }

    /// <summary>
    /// Derivatives of the (scaled) probability of the evidence, divided by it: afterwards, for every table that took part,
    /// the sum of value times derivative over its rows is 1.
    /// </summary>
    public void Down(double[] values, double[] derivatives, double[] scales)
    {
        Array.Clear(derivatives, 0, Rows);
        foreach (var root in _roots)
            derivatives[root] = 1 / values[root];
        for (var s = _steps.Count - 1; s >= 0; s--)
        {
            var step = _steps[s];
            int[] left = step.Left, right = step.Right, sum = step.Sum;
            for (var r = step.Start; r < step.End; r++)
                derivatives[r] *= scales[s];
            for (var i = 0; i < left.Length && i < right.Length && i < sum.Length; i++)
            {
                var d = derivatives[sum[i]];
                int l = left[i], m = right[i];
                derivatives[l] += d * values[m];
                derivatives[m] += d * values[l];
            }
        }
    }
}

/// <summary>Products of one join: value[Sum[i]] += value[Left[i]] * value[Right[i]]; sums lie from Start to End (exclusive).</summary>
internal sealed record Step(int[] Left, int[] Right, int[] Sum, int Start, int End);
