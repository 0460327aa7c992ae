namespace Undercowl.Inference;

/// <summary>The numbers of all findings, each scaled by a power of two to have its largest in [1, 2), and the exponents taken out.</summary>
internal sealed class Likelihoods
{
    public Likelihoods(Evidence evidence)
    {
        Numbers = new double[evidence.Count][];
        Exponents = new int[evidence.Count];
        for (var f = 0; f < evidence.Count; f++)
        {
            Numbers[f] = new double[evidence.Findings[f].Dense.Length];
            Set(f, evidence.Findings[f].Dense);
        }
    }

    public double[][] Numbers { get; }

    public int[] Exponents { get; }

    /// <summary>Replaces the numbers of a finding by as many others.</summary>
    public void Set(int finding, ReadOnlySpan<double> numbers)
    {
        numbers.CopyTo(Numbers[finding]);
        Exponents[finding] = Scaling.Normalise(Numbers[finding], 0, numbers.Length, out _);
    }
}
