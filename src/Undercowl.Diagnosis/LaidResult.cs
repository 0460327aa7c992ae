using Undercowl.Diagnosis.Graph;
using Undercowl.Jobs;

namespace Undercowl.Diagnosis;

/// <summary>
/// What came of a remedy, laid over the network: the complaint was tried after it, as by its own test, and is gone or not. It is
/// no finding, since nobody says which test was made, and it proves no repair.
/// </summary>
/// <param name="Remedy">The remedy.</param>
/// <param name="Came">What was said of it.</param>
/// <param name="Told">Each node that it tells about, with the chance of what was said by level.</param>
internal sealed record LaidResult(Said<Remedy> Remedy, RemedyResult Came, IReadOnlyList<(Signal Signal, double[] PerLevel)> Told)
{
    public string Label => Remedy.Id.ToString();
}
