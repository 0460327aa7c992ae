namespace Undercowl.Planning.Tests;

/// <summary>How close is equal, with the reason for each.</summary>
internal static class Near
{
    /// <summary>Doubles through a few hundred additions and products of numbers between 1e-3 and 1e3 agree this well.</summary>
    internal const double Sums = 1e-9;

    internal static void Equal(double expected, double actual, double within = Sums)
    {
        Assert.True(
            Math.Abs(expected - actual) <= within * Math.Max(1, Math.Abs(expected)),
            FormattableString.Invariant($"expected {expected:R}, got {actual:R}"));
    }

    internal static void AtLeast(double bound, double actual)
    {
        Assert.True(
            actual >= bound - Sums * Math.Max(1, Math.Abs(bound)),
            FormattableString.Invariant($"{actual:R} is below {bound:R}"));
    }
}
