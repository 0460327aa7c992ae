namespace Undercowl.Diagnosis.Readings;

/// <summary>
/// Cylinder against cylinder: what the engine's other places read tells where in the generic range this engine lies, so that one that
/// is low among good ones stands out. The best of them is taken for good, with those that read alike; where even the best
/// is out of the range, all may be low together, and nothing is learnt of the engine.
/// </summary>
internal static class Fellows
{
    /// <summary>Standard deviations within which two readings are alike, and one is in the range. Estimate.</summary>
    private const double Alike = 2;

    /// <param name="generic">What the value would be compared with alone.</param>
    /// <param name="range">How far an engine may be from it; it and all that follow are of natural logarithms.</param>
    /// <param name="spread">Scatter of good places of one engine.</param>
    /// <param name="others">What the other places read, over what is good.</param>
    /// <returns>The generic figure moved to where this engine most likely lies, with what then is left of the range.</returns>
    public static Reference Beside(Reference generic, double range, double spread, double[] others)
    {
        if (others.Length == 0 || Math.Abs(others.Max()) > Alike * Math.Sqrt(range * range + spread * spread))
        {
            return generic;
        }

        double[] good = [.. others.Where(o => o >= others.Max() - Alike * spread)];
        var (told, known) = (good.Length / (spread * spread), 1 / (range * range));
        var times = Math.Exp(good.Average() * told / (told + known));
        return generic with { Low = generic.Low * times, High = generic.High * times, Spread = Math.Sqrt(1 / (told + known)) };
    }
}
