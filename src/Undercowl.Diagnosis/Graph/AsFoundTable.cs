using Undercowl.Diagnosis.Engine;
using Undercowl.Knowledge;

namespace Undercowl.Diagnosis.Graph;

/// <summary>
/// Chances of an aspect's states as the engine came in, for each level of the quantity that it is given and each way in which the
/// common causes that bear on it may be: the quantity slowest, then the causes, the last of them fastest, the own state fastest of all.
/// </summary>
internal static class AsFoundTable
{
    /// <param name="swayed">The common causes.</param>
    /// <param name="levels">By level of the quantity, the chances of all states with the common causes averaged over; one row when there is none.</param>
    public static double[] Of(Swayed[] swayed, IReadOnlyList<double[]> levels)
    {
        var ways = 1 << swayed.Length;
        var table = new List<double>(levels.Count * ways * levels[0].Length);
        foreach (var average in levels)
        {
            var without = Array.ConvertAll(average, p => p);
            for (var s = 1; s < without.Length; s++)
            {
                without[s] = CommonCauseShare.Without(average[s], swayed.Select(c => (c.Cause.Prior, c.Times[s])));
            }

            for (var way = 0; way < ways; way++)
            {
                table.AddRange(Row(swayed, without, way));
            }
        }

        return [.. table];
    }

    /// <param name="swayed">The common causes.</param>
    /// <param name="without">Chances where none of them befell the engine.</param>
    /// <param name="way">One bit for each of them, the last lowest: whether it did.</param>
    private static double[] Row(Swayed[] swayed, double[] without, int way)
    {
        var row = (double[])without.Clone();
        row[0] = 1;
        for (var s = 1; s < row.Length; s++)
        {
            for (var c = 0; c < swayed.Length; c++)
            {
                row[s] *= (way >> (swayed.Length - 1 - c) & 1) == 1 ? swayed[c].Times[s] : 1;
            }

            row[0] -= row[s];
        }

        return row;
    }
}
