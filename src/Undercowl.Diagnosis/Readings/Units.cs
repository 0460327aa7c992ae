namespace Undercowl.Diagnosis.Readings;

/// <summary>Units that readings and specs may be given in, each as a factor of one unit of its dimension (exact by definition).</summary>
internal static class Units
{
    private static readonly Dictionary<string, (string Dimension, double Factor, double Offset)> Known = new(StringComparer.Ordinal)
    {
        ["V"] = ("voltage", 1, 0),
        ["mV"] = ("voltage", 1e-3, 0),
        ["kV"] = ("voltage", 1e3, 0),
        ["ohm"] = ("resistance", 1, 0),
        ["kohm"] = ("resistance", 1e3, 0),
        ["Mohm"] = ("resistance", 1e6, 0),
        ["mm"] = ("length", 1, 0),
        ["in"] = ("length", 25.4, 0),
        ["thou"] = ("length", 0.0254, 0),
        ["m"] = ("length", 1e3, 0),
        ["ft"] = ("length", 304.8, 0),
        ["kPa"] = ("pressure", 1, 0),
        ["hPa"] = ("pressure", 0.1, 0),
        ["bar"] = ("pressure", 100, 0),
        ["psi"] = ("pressure", 6.894757293168361, 0),
        ["rpm"] = ("speed", 1, 0),
        ["A"] = ("current", 1, 0),
        ["%"] = ("share", 1, 0),
        ["°C"] = ("temperature", 1, 0),
        ["degC"] = ("temperature", 1, 0),
        ["°F"] = ("temperature", 5.0 / 9, -32),
        ["degF"] = ("temperature", 5.0 / 9, -32),
        ["deg"] = ("angle", 1, 0),
        ["s"] = ("time", 1, 0),
        ["min"] = ("time", 60, 0),
    };

    public static bool IsKnown(string unit) => Known.ContainsKey(unit);

    /// <summary>Null when a unit is unknown or the two are of different dimensions.</summary>
    public static double? Convert(double value, string from, string to) =>
        Known.TryGetValue(from, out var a) && Known.TryGetValue(to, out var b) && a.Dimension == b.Dimension
            ? (value + a.Offset) * a.Factor / b.Factor - b.Offset
            : null;

    /// <summary>The units of the same dimension.</summary>
    public static IEnumerable<string> Like(string unit) =>
        Known.TryGetValue(unit, out var of) ? Known.Where(u => u.Value.Dimension == of.Dimension).Select(u => u.Key) : [];
}
