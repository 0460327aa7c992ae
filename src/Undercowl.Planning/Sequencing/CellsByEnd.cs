namespace Undercowl.Planning.Sequencing;

/// <summary>The cells with those of one end side by side, so that what an end weighs is one run of sums.</summary>
internal sealed class CellsByEnd
{
    /// <param name="cells">The cells.</param>
    /// <param name="endOf">By cell: the number of its end; all numbers from 0 up are there.</param>
    internal CellsByEnd(Cells cells, int[] endOf)
    {
        Cell = [.. Enumerable.Range(0, endOf.Length).OrderBy(i => endOf[i])];
        First = [.. Enumerable.Range(0, Cell.Length).Where(i => i == 0 || endOf[Cell[i]] != endOf[Cell[i - 1]]), Cell.Length];
        Chance = Array.ConvertAll(cells.Chance, Laid);
    }

    /// <summary>By place: the cell.</summary>
    internal int[] Cell { get; }

    /// <summary>By end: the place of its first cell; one more at last, behind all.</summary>
    internal int[] First { get; }

    /// <summary>As <see cref="Cells.Chance"/>, by place.</summary>
    internal double[][] Chance { get; }

    /// <summary>Numbers by cell, several rows of them perhaps, laid out by place.</summary>
    internal double[] Laid(double[] of)
    {
        var laid = new double[of.Length];
        int[] cell = Cell;
        for (int row = 0; row < laid.Length; row += cell.Length)
        {
            for (int i = 0; i < cell.Length; i++) laid[row + i] = of[row + cell[i]];
        }

        return laid;
    }
}
