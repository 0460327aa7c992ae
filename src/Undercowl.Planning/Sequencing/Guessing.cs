namespace Undercowl.Planning.Sequencing;

/// <summary>
/// The chance of guessing right what a job ends in, times the weight: the sum of squares of what each end weighs, over what all weigh.
/// </summary>
internal sealed class Guessing
{
    private readonly int[] cell;
    private readonly int[] first;
    private readonly double[][] chance;
    private readonly double[] left;

    /// <param name="cells">The cells.</param>
    /// <param name="endOf">By cell: the number of its end.</param>
    internal Guessing(Cells cells, int[] endOf)
    {
        var byEnd = new CellsByEnd(cells, endOf);
        (cell, first, chance) = (byEnd.Cell, byEnd.First, byEnd.Chance);
        left = new double[cell.Length];
    }

    /// <summary>As it stands at a position, which the next calls are about.</summary>
    internal double Right(Position here)
    {
        double[] from = here.Left, weight = left;
        int[] order = cell, start = first;
        for (int i = 0; i < weight.Length; i++) weight[i] = from[order[i]];
        double sum = 0, squares = 0;
        for (int e = 0, i = 0; e < start.Length - 1; e++)
        {
            double mass = 0;
            for (int end = start[e + 1]; i < end; i++) mass += weight[i];
            sum += mass;
            squares += mass * mass;
        }

        return sum > 0 ? squares / sum : 0;
    }

    /// <summary>When the answer of a check is known.</summary>
    internal double Right(int check)
    {
        double[] told = chance[check], weight = left;
        int[] start = first;
        double right = 0;
        for (int block = 0; block < told.Length; block += weight.Length)
        {
            double sum = 0, squares = 0;
            for (int e = 0, i = 0; e < start.Length - 1; e++)
            {
                double mass = 0;
                for (int end = start[e + 1]; i < end; i++) mass += weight[i] * told[block + i];
                sum += mass;
                squares += mass * mass;
            }

            if (sum > 0) right += squares / sum;
        }

        return right;
    }
}
