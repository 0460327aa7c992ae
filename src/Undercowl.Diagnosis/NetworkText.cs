using Undercowl.Inference;

namespace Undercowl.Diagnosis;

/// <summary>A network written out for general tools.</summary>
/// <param name="Text">The network; in XMLBIF its evidence is in it.</param>
/// <param name="Evidence">For UAI the evidence file; null for XMLBIF.</param>
public sealed record NetworkText(string Text, string? Evidence)
{
    internal static NetworkText Of(JobNetwork network, string format)
    {
        throw new NotSupportedException(network.Network.Count + format + nameof(Elimination));
    }
}
