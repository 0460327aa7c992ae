using System.Numerics;

namespace Undercowl.Inference;

/// <summary>For each row the draws that stand there, in the order in which they came. What one row no longer needs is used again for another.</summary>
internal sealed class Waiting(int rows)
{
    private const int Least = 16;

    private readonly int[]?[] _draws = new int[]?[rows];
    private readonly int[] _counts = new int[rows];

    /// <summary>Arrays to be used again, by the logarithm of their length to base 2.</summary>
    private readonly Stack<int[]>[] _spare = [.. Enumerable.Range(0, 32).Select(_ => new Stack<int[]>())];

    public void Add(int row, int draw)
    {
        var count = _counts[row];
        var draws = _draws[row];
        if (draws is null || count == draws.Length)
            draws = Longer(row, draws);
        draws[count] = draw;
        _counts[row] = count + 1;
    }

    /// <summary>The draws of a row, which then has none, or null; to be given back.</summary>
    public int[]? Take(int row, out int count)
    {
        count = _counts[row];
        var draws = _draws[row];
        _draws[row] = null;
        _counts[row] = 0;
        return draws;
    }

    public void GiveBack(int[] draws) => _spare[BitOperations.Log2((uint)draws.Length)].Push(draws);

    private int[] Longer(int row, int[]? draws)
    {
        var length = draws is null ? Least : 2 * draws.Length;
        if (!_spare[BitOperations.Log2((uint)length)].TryPop(out var longer))
            longer = new int[length];
        if (draws is not null)
        {
            draws.CopyTo(longer, 0);
            GiveBack(draws);
        }

        return _draws[row] = longer;
    }
}
