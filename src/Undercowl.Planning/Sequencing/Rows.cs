namespace Undercowl.Planning.Sequencing;

/// <summary>Rows of varying length in one array: row r is the entries from <c>Start[r]</c> up to <c>Start[r + 1]</c>.</summary>
internal readonly struct Rows
{
    internal readonly int[] Start;
    internal readonly int[] Entry;
    internal readonly double[] Value;

    internal Rows(List<(int Row, int Entry, double Value)> cells, int rows)
    {
        Start = new int[rows + 1];
        Entry = new int[cells.Count];
        Value = new double[cells.Count];
        foreach (var cell in cells) Start[cell.Row + 1]++;
        for (int r = 0; r < rows; r++) Start[r + 1] += Start[r];
        var next = (int[])Start.Clone();
        foreach (var (row, entry, value) in cells)
        {
            int at = next[row]++;
            Entry[at] = entry;
            Value[at] = value;
        }
    }

    internal ReadOnlySpan<int> this[int row] => Entry.AsSpan(Start[row], Start[row + 1] - Start[row]);
}
