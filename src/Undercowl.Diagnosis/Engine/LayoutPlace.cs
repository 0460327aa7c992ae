using System.Globalization;
using Undercowl.Knowledge;

namespace Undercowl.Diagnosis.Engine;

/// <summary>Which cylinders a place of a layout serves.</summary>
internal static class LayoutPlace
{
    /// <summary>Cylinders in ascending order; all of them for the engine and for a side.</summary>
    public static int[] Cylinders(EngineLayout layout, string place)
    {
        var colon = place.IndexOf(':', StringComparison.Ordinal);
        var rest = place[(colon + 1)..];
        return (colon < 0 ? "" : place[..colon]) switch
        {
            "cyl" or "pair" or "group" => [.. rest.Split('+').Select(n => int.Parse(n, CultureInfo.InvariantCulture))],
            "bank" => layout.Banks.TryGetValue(rest, out var bank)
                ? [.. bank]
                : throw new DiagnosisException($"The layout {layout.Id} has no bank {rest}.", $"Use one of: {string.Join(", ", layout.Banks.Keys)}."),
            _ => [.. Enumerable.Range(1, layout.Cylinders)],
        };
    }

    /// <summary>The places that a part entry of a layout stands for.</summary>
    public static IEnumerable<string> Expand(EngineLayout layout, LayoutPart part) => part.At.Values.SelectMany(at =>
        at == "each cyl" ? Enumerable.Range(1, layout.Cylinders).Select(Cylinder) : [at]);

    public static string Cylinder(int cylinder) => string.Create(CultureInfo.InvariantCulture, $"cyl:{cylinder}");
}
