using System.Globalization;

namespace Undercowl.Physics.Tests;

/// <summary>The suite's two questions: is it within a relative tolerance, and is it refused naming the right quantity.</summary>
internal static class Expect
{
    public static void Within(double relativeTolerance, double expected, double actual)
    {
        double error = Math.Abs(actual - expected) / Math.Abs(expected);
        Assert.True(
            error <= relativeTolerance,
            string.Create(
                CultureInfo.InvariantCulture,
                $"expected {expected:R} within {relativeTolerance:G3}, got {actual:R} (off by {error:G3})"));
    }

    public static void Outside(double relativeDistance, double unwanted, double actual) =>
        Assert.True(
            Math.Abs(actual - unwanted) / Math.Abs(unwanted) > relativeDistance,
            string.Create(
                CultureInfo.InvariantCulture,
                $"{actual:R} is within {relativeDistance:G3} of {unwanted:R}, which it must not be"));

    public static PhysicsRangeException Refused(string quantity, Func<double> formula)
    {
        PhysicsRangeException error = Assert.Throws<PhysicsRangeException>(() => formula());
        Assert.Equal(quantity, error.Quantity);
        Assert.NotEmpty(error.Mend);
        Assert.StartsWith(quantity + " is ", error.Message, StringComparison.Ordinal);
        return error;
    }
}
