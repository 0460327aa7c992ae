namespace Undercowl.Inference;

/// <summary>Keeps numbers in range by powers of two, which are exact in binary: scaling never rounds and never shows.</summary>
internal static class Scaling
{
    private static readonly double Big = Math.ScaleB(1, 1000);

    /// <summary>
    /// Scales values[start..end) so that the largest lies in [1, 2). Returns the exponent taken out and the factor applied;
    /// 0 and 1 when all are zero.
    /// </summary>
    public static int Normalise(double[] values, int start, int end, out double factor)
    {
        var largest = 0.0;
        for (var r = start; r < end; r++)
        {
            if (values[r] > largest)
                largest = values[r];
        }

        factor = 1;
        if (largest == 0)
            return 0;
        var exponent = Math.ILogB(largest);
        if (exponent == 0)
            return 0;
        var rest = exponent;
        if (exponent < -1000)
        {
            // One power of two cannot reach from the smallest double to 1.
            for (var r = start; r < end; r++)
                values[r] *= Big;
            factor = Big;
            rest += 1000;
        }

        var power = Math.ScaleB(1, -rest);
        for (var r = start; r < end; r++)
            values[r] *= power;
        factor *= power;
        return exponent;
    }
}
