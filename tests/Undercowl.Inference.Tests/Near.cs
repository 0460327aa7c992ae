namespace Undercowl.Inference.Tests;

/// <summary>The tolerances of this suite, each with its reason.</summary>
internal static class Near
{
    /// <summary>Two exact methods, sums of up to 20,000 terms of one sign: relative error of some 1e-12 at the very worst.</summary>
    public const double Exact = 1e-11;

    /// <summary>Published or recomputed figures printed to nine significant digits.</summary>
    public const double NineDigits = 6e-10;

    public static void Equal(double expected, double actual, double tolerance, string what = "")
    {
        if (!(Math.Abs(expected - actual) <= tolerance * Math.Max(1, Math.Abs(expected))))
            Assert.Fail($"{what}: expected {expected:R}, got {actual:R}");
    }

    public static void Equal(ReadOnlySpan<double> expected, ReadOnlySpan<double> actual, double tolerance, string what)
    {
        Assert.Equal(expected.Length, actual.Length);
        for (var i = 0; i < expected.Length; i++)
            Equal(expected[i], actual[i], tolerance, $"{what}[{i}]");
    }
}
