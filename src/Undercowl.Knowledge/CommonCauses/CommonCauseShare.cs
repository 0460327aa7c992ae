namespace Undercowl.Knowledge;

/// <summary>
/// The part of a condition's prior that is left when no common cause befell the engine. With independent causes of chance p that
/// make it t times likelier each, the average over them is that share times the product of 1 + p (t - 1): set equal to the prior.
/// </summary>
public static class CommonCauseShare
{
    /// <param name="prior">Chance (0 to 1) of the condition over all engines.</param>
    /// <param name="causes">Each cause's chance p and how many times likelier (t above 0) it makes the condition.</param>
    /// <returns>Chance of the condition where none of them befell the engine; the prior itself when there are none.</returns>
    public static double Without(double prior, IEnumerable<(double Prior, double Times)> causes)
    {
        ArgumentNullException.ThrowIfNull(causes);
        foreach (var (chance, times) in causes)
        {
            prior /= 1 + chance * (times - 1);
        }

        return prior;
    }
}
