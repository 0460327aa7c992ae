using Undercowl.Inference.Formats;

namespace Undercowl.Diagnosis;

/// <summary>A network written out for general tools.</summary>
/// <param name="Text">The network; readings are observed children in it.</param>
/// <param name="Evidence">For UAI the evidence file; null for XMLBIF, which holds it.</param>
public sealed record NetworkText(string Text, string? Evidence)
{
    internal static NetworkText Of(JobNetwork network, string format)
    {
        switch (format)
        {
            case "xmlbif":
                return new NetworkText(XmlBif.Write(network.Evidence()), null);
            case "uai":
                var uai = Uai.Write(network.Evidence());
                return new NetworkText(uai.Network, uai.Evidence);
            default:
                throw new DiagnosisException($"There is no network format \"{format}\".", "Use xmlbif or uai.");
        }
    }
}
