using Undercowl.Diagnosis.Answers;

namespace Undercowl.App.Parts;

/// <summary>
/// Where the blocks of one band stand: a column for each kind of part in the layout's order, and sound parts without a
/// reading drawn together as one narrow column while the drawing is an overview.
/// </summary>
internal static class LaneDrawing
{
    /// <summary>A part that is less suspect than this, and of which nothing was read, is drawn with others of its sort.</summary>
    public const double Sound = 0.02;

    public static bool Plain(BlockAnswer block) => block.Suspect < Sound && block.Readings.Count == 0;

    /// <param name="blocks">The blocks of the band.</param>
    /// <param name="all">True to draw every part.</param>
    public static IReadOnlyList<LaneColumn> Columns(IEnumerable<BlockAnswer> blocks, bool all)
    {
        var columns = new List<LaneColumn>();
        foreach (var kind in blocks.GroupBy(b => b.Kind))
        {
            BlockAnswer[] same = [.. kind];
            if (all || !same.All(Plain))
            {
                columns.Add(new LaneColumn(same, []));
            }
            else if (columns.Count > 0 && columns[^1].Together.Count > 0)
            {
                columns[^1] = new LaneColumn([], [.. columns[^1].Together, .. same]);
            }
            else
            {
                columns.Add(new LaneColumn([], same));
            }
        }

        return columns;
    }

    /// <summary>The runs of neighbouring lanes that a block serves: first lane (from 0) and how many.</summary>
    public static IEnumerable<(int First, int Count)> Runs(IReadOnlyList<int> cylinders)
    {
        for (var i = 0; i < cylinders.Count;)
        {
            var end = i + 1;
            while (end < cylinders.Count && cylinders[end] == cylinders[end - 1] + 1)
            {
                end++;
            }

            yield return (cylinders[i] - 1, end - i);
            i = end;
        }
    }
}

/// <summary>A column of the drawing: blocks of one kind, or sound parts drawn together.</summary>
internal sealed record LaneColumn(IReadOnlyList<BlockAnswer> Blocks, IReadOnlyList<BlockAnswer> Together);
