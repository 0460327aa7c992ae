namespace Undercowl.Inference;

/// <summary>
/// Multiplies two sparse tables and sums out what no other table needs, in one go: rows that agree on the shared
/// variables meet, products that agree on the remaining variables are added. Structure only: where each product's factors
/// and sum lie is written to the tape. The number of products is counted before anything is built, so a budget stops a
/// join that would not fit in memory rather than the memory doing so.
/// </summary>
internal sealed class Joining(Tape tape, int[] states, long budget)
{
    private readonly Grouping _grouping = new();
    private int[] _sharedA = [];
    private int[] _sharedB = [];
    private int[] _keptA = [];
    private int[] _keptB = [];
    private long _projected;

    /// <summary>Joins a with b (or only sums when b is null); variables marked in <paramref name="drop"/> are summed out.</summary>
    public Table Join(Table a, Table? b, bool[] drop)
    {
        var keptA = Array.FindAll(a.Scope, v => !drop[v]);
        var shared = b is null ? [] : Array.FindAll(a.Scope, b.Covers);
        var keptB = b is null ? [] : Array.FindAll(b.Scope, v => !drop[v] && !a.Covers(v));
        Ensure(ref _keptA, a.Count);
        var groupsA = _grouping.Number(a, keptA, states, _keptA);
        var rowsA = Sort(_keptA, a.Count, groupsA, out var startA);
        return b is null ? SumOnly(a, keptA, rowsA, startA) : JoinSorted(a, b, shared, keptA, keptB, rowsA, startA);
    }

    /// <summary>Only these rows of a table.</summary>
    public Table Select(Table table, int[] rows)
    {
        Charge(rows.Length, rows.Length, table.Scope);
        var right = new int[rows.Length];
        Array.Fill(right, Tape.One);
        var start = tape.Rows;
        int[] left = [.. rows.Select(r => table.Offset + r)], sum = [.. Enumerable.Range(start, rows.Length)];
        return Finish(table.Scope, Array.ConvertAll(table.Columns, c => Gather(c, rows, rows.Length)), rows.Length, left, right, sum);
    }

    /// <summary>The distinct joint states of a few of the table's variables, as a table of ones; the rows read count.</summary>
    public Table Project(Table table, int[] variables)
    {
        Charge(0, table.Count, table.Scope);
        _projected += table.Count;
        Ensure(ref _keptA, table.Count);
        var groups = _grouping.Number(table, variables, states, _keptA);
        var seen = new bool[groups];
        var first = new int[table.Count];
        var count = 0;
        for (var r = 0; r < table.Count; r++)
        {
            if (seen[_keptA[r]])
                continue;
            seen[_keptA[r]] = true;
            first[count++] = r;
        }

        return new Table(variables, Array.ConvertAll(variables, v => Gather(table.ColumnOf(v), first, count)), count, []) { Guide = true };
    }

    private static void Ensure(ref int[] buffer, int length)
    {
        if (buffer.Length < length)
            buffer = new int[Math.Max(length, 2 * buffer.Length)];
    }

    /// <summary>Counting sort: rows by group; group g has rows[start[g]] to rows[start[g + 1] - 1].</summary>
    private static int[] Sort(int[] groupOfRow, int count, int groups, out int[] start)
    {
        start = new int[groups + 1];
        for (var r = 0; r < count; r++)
            start[groupOfRow[r] + 1]++;
        for (var g = 0; g < groups; g++)
            start[g + 1] += start[g];
        var rows = new int[count];
        for (var r = count - 1; r >= 0; r--)
            rows[--start[groupOfRow[r] + 1]] = r;
        // Each start[g + 1] has moved down to the beginning of group g: shift it back into place.
        Array.Copy(start, 1, start, 0, groups);
        start[groups] = count;
        return rows;
    }

    private void Charge(long products, long rows, int[] scope)
    {
        if (products + rows + _projected + tape.Products + tape.Rows <= budget)
            return;
        throw new InferenceException(InferenceFault.RowBudget, $"The exact sum needs more than {budget} rows; raise the row budget or give it fewer findings.")
        {
            Variables = scope,
        };
    }

    private Table SumOnly(Table a, int[] keptA, int[] rowsA, int[] startA)
    {
        Charge(a.Count, a.Count, a.Scope);
        var left = new int[a.Count];
        var right = new int[a.Count];
        var sum = new int[a.Count];
        var first = new int[a.Count];
        var start = tape.Rows;
        var outRows = 0;
        for (int g = 0, k = 0; g + 1 < startA.Length; g++)
        {
            if (startA[g] == startA[g + 1])
                continue;
            first[outRows] = rowsA[startA[g]];
            for (var i = startA[g]; i < startA[g + 1]; i++, k++)
            {
                left[k] = a.Offset + rowsA[i];
                right[k] = Tape.One;
                sum[k] = start + outRows;
            }

            outRows++;
        }

        var columns = new byte[keptA.Length][];
        for (var i = 0; i < keptA.Length; i++)
            columns[i] = Gather(a.ColumnOf(keptA[i]), first, outRows);
        return Finish(keptA, columns, outRows, left, right, sum);
    }

    private Table JoinSorted(Table a, Table b, int[] shared, int[] keptA, int[] keptB, int[] rowsA, int[] startA)
    {
        Ensure(ref _sharedA, a.Count);
        Ensure(ref _sharedB, b.Count);
        Ensure(ref _keptB, b.Count);
        var groups = _grouping.Number(a, b, shared, states, _sharedA, _sharedB);
        var groupsB = _grouping.Number(b, keptB, states, _keptB);
        var rowsB = Sort(_sharedB, b.Count, groups, out var startB);
        long products = 0;
        for (var r = 0; r < a.Count; r++)
            products += startB[_sharedA[r] + 1] - startB[_sharedA[r]];
        var most = Math.Min(products, (long)(startA.Length - 1) * groupsB);
        Charge(products, 0, [.. a.Scope, .. keptB]);
        var left = new int[products];
        var right = new int[products];
        var sum = new int[products];
        var fromA = new int[most];
        var fromB = new int[most];
        var slot = new int[groupsB];
        var stamp = new int[groupsB];
        var keptOfB = _keptB;
        var sharedOfA = _sharedA;
        var start = tape.Rows;
        // A guide's rows are all the constant one.
        int maskA = a.Guide ? 0 : -1, baseA = a.Guide ? Tape.One : a.Offset;
        int maskB = b.Guide ? 0 : -1, baseB = b.Guide ? Tape.One : b.Offset;
        int outRows = 0, k = 0;
        for (var g = 0; g + 1 < startA.Length; g++)
        {
            for (var i = startA[g]; i < startA[g + 1]; i++)
            {
                var ra = rowsA[i];
                var end = startB[sharedOfA[ra] + 1];
                for (var j = startB[sharedOfA[ra]]; j < end; j++, k++)
                {
                    var rb = rowsB[j];
                    var h = keptOfB[rb];
                    if (stamp[h] != g + 1)
                    {
                        stamp[h] = g + 1;
                        slot[h] = outRows;
                        fromA[outRows] = ra;
                        fromB[outRows++] = rb;
                    }

                    left[k] = (ra & maskA) + baseA;
                    right[k] = (rb & maskB) + baseB;
                    sum[k] = start + slot[h];
                }
            }
        }

        Charge(products, outRows, [.. keptA, .. keptB]);
        var columns = new byte[keptA.Length + keptB.Length][];
        for (var i = 0; i < keptA.Length; i++)
            columns[i] = Gather(a.ColumnOf(keptA[i]), fromA, outRows);
        for (var i = 0; i < keptB.Length; i++)
            columns[keptA.Length + i] = Gather(b.ColumnOf(keptB[i]), fromB, outRows);
        return Finish([.. keptA, .. keptB], columns, outRows, left, right, sum);
    }

    private static byte[] Gather(byte[] column, int[] rows, int count)
    {
        var gathered = new byte[count];
        for (var r = 0; r < count; r++)
            gathered[r] = column[rows[r]];
        return gathered;
    }

    private Table Finish(int[] scope, byte[][] columns, int count, int[] left, int[] right, int[] sum)
    {
        var table = new Table(scope, columns, count, []);
        tape.Place(table);
        tape.Add(new Step(left, right, sum, table.Offset, table.Offset + count));
        return table;
    }
}
