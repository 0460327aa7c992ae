namespace Undercowl.Diagnosis.Beliefs;

/// <summary>Odds in decibans: ten times their common logarithm. 13 are odds of twenty to one.</summary>
public static class Decibans
{
    public static double Of(double probability) => 10 * Math.Log10(probability / (1 - probability));
}
