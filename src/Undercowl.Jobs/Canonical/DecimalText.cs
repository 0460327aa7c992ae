using System.Globalization;

namespace Undercowl.Jobs;

/// <summary>
/// A number exactly as it was read off: optional minus, digits, optional fraction. Not a double and not rounded;
/// "0.9" and "0.90" are two different texts, because the second says more. No exponent, no leading zeros, at most
/// 28 digits (what <see cref="decimal"/> holds exactly). The default value is no number and has the text "".
/// </summary>
public readonly record struct DecimalText
{
    private readonly string? text;

    private DecimalText(string text) => this.text = text;

    /// <summary>The digits as written.</summary>
    public string Text => text ?? "";

    /// <summary>The exact value. Throws on the default value.</summary>
    public decimal Value => decimal.Parse(Text, NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture);

    /// <summary>Parses or throws <see cref="JobException"/>, saying how to write the number.</summary>
    public static DecimalText Parse(string text) => TryParse(text, out var value)
        ? value
        : throw new JobException($"\"{text}\" is not a decimal number.", "Write digits with a point, for example 12, 0.9 or -3.50; no exponent, no thousands mark, at most 28 digits.");

    public static bool TryParse(string? text, out DecimalText value)
    {
        value = default;
        if (text is null)
            return false;
        var rest = text.AsSpan();
        if (rest is ['-', ..])
            rest = rest[1..];
        var point = rest.IndexOf('.');
        var whole = point < 0 ? rest : rest[..point];
        var fraction = point < 0 ? [] : rest[(point + 1)..];
        if (whole.IsEmpty || (whole.Length > 1 && whole[0] == '0') || (point >= 0 && fraction.IsEmpty))
            return false;
        if (!AllDigits(whole) || !AllDigits(fraction) || whole.Length + fraction.Length > 28)
            return false;
        value = new DecimalText(text);
        return true;
    }

    public override string ToString() => Text;

    private static bool AllDigits(ReadOnlySpan<char> text) => text.IndexOfAnyExceptInRange('0', '9') < 0;
}
