using Undercowl.Jobs;

namespace Undercowl.Diagnosis.Readings;

/// <summary>Reads what a person types for a measured value: <c>11mm</c>, <c>0,9 mm</c>, <c>.035in</c>, <c>12.6</c>.</summary>
public static class Measurement
{
    /// <summary>The value in another unit of its dimension; null when a unit is unknown or the dimensions differ.</summary>
    public static double? In(Measured measured, string unit)
    {
        ArgumentNullException.ThrowIfNull(measured);
        return Units.Convert((double)measured.Value.Value, measured.Unit, unit);
    }

    /// <param name="text">Digits with a point or a comma, and a unit or none.</param>
    /// <param name="unit">The unit when none is typed.</param>
    /// <returns>Null when it is no measurement, or the unit is unknown.</returns>
    public static Measured? TryParse(string text, string unit)
    {
        ArgumentNullException.ThrowIfNull(text);
        var trimmed = text.Trim();
        var end = 0;
        while (end < trimmed.Length && (char.IsAsciiDigit(trimmed[end]) || trimmed[end] is '.' or ',' or '-'))
        {
            end++;
        }

        var digits = trimmed[..end].Replace(',', '.');
        digits = digits.StartsWith('.') ? "0" + digits : digits.StartsWith("-.", StringComparison.Ordinal) ? "-0" + digits[1..] : digits;
        var typed = trimmed[end..].Trim();
        typed = typed switch { "" => unit, "v" => "V", "k" => "kohm", "C" => "°C", "F" => "°F", "Ω" => "ohm", "kΩ" => "kohm", "mbar" => "hPa", "\"" => "in", _ => typed };
        return DecimalText.TryParse(digits, out var value) && Units.IsKnown(typed) ? new Measured(value, typed) : null;
    }
}
