namespace Undercowl.Physics;

/// <summary>
/// Straight lines between the rows of a table. Both columns have the same length, two or more; the first rises
/// strictly. Ends are continued along the outermost line, so callers check the range first.
/// </summary>
internal static class LinearTable
{
    public static double Interpolate(ReadOnlySpan<double> from, ReadOnlySpan<double> to, double value)
    {
        int upper = 1;
        while (upper < from.Length - 1 && value > from[upper])
        {
            upper++;
        }

        double fraction = (value - from[upper - 1]) / (from[upper] - from[upper - 1]);
        return to[upper - 1] + (fraction * (to[upper] - to[upper - 1]));
    }
}
