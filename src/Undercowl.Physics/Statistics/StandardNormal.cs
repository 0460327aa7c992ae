namespace Undercowl.Physics;

/// <summary>
/// The normal distribution with mean 0 and standard deviation 1. Any number is taken, infinities too; NaN gives NaN, since
/// there is no range to mend.
/// </summary>
public static class StandardNormal
{
    private const double InverseRootTwo = 0.70710678118654752440;
    private const double LogRootTwoPi = 0.91893853320467274178;

    /// <summary>
    /// Probability of a value below z, 0 to 1. Relative error below 1e-14 to z = -5 and 1e-12 in the far tail, which
    /// underflows to 0 below -37.5; use <see cref="LogCumulative"/> there.
    /// </summary>
    public static double Cumulative(double z) => 0.5 * ErrorFunction.Erfc(-z * InverseRootTwo);

    /// <summary>
    /// Natural logarithm of <see cref="Cumulative"/>, finite for every finite z above about -1e154 and never cancelling to
    /// zero digits.
    /// </summary>
    public static double LogCumulative(double z)
    {
        if (z > -1)
        {
            return LogOnePlus(-0.5 * ErrorFunction.Erfc(z * InverseRootTwo));
        }

        return double.IsNegativeInfinity(z)
            ? double.NegativeInfinity
            : Math.Log(0.5 * ErrorFunction.ScaledErfc(-z * InverseRootTwo)) - (z * z / 2);
    }

    /// <summary>
    /// Probability of a value between two bounds, lower first (equal or crossed bounds give 0); taken from whichever tail
    /// keeps the digits.
    /// </summary>
    public static double Between(double lower, double upper)
    {
        if (lower >= upper)
        {
            return 0;
        }

        return lower > 0 ? Cumulative(-lower) - Cumulative(-upper) : Cumulative(upper) - Cumulative(lower);
    }

    /// <summary>Probability density at z, per unit of z.</summary>
    public static double Density(double z) => Math.Exp(LogDensity(z));

    /// <summary>Natural logarithm of <see cref="Density"/>.</summary>
    public static double LogDensity(double z) => (-z * z / 2) - LogRootTwoPi;

    // The runtime's own LogP1 is log(1 + x) and loses a small x; dividing the rounding error back out (Kahan) does not.
    private static double LogOnePlus(double x)
    {
        double onePlus = 1 + x;
        return onePlus == 1 ? x : Math.Log(onePlus) * (x / (onePlus - 1));
    }
}
