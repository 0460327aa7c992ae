namespace Undercowl.Jobs;

/// <summary>
/// A measured number with its unit, as the instrument or the book gave it. Not converted: the unit is text, and
/// what it means is for the reader. An absent measurement is a null reference; zero is a reading like any other.
/// </summary>
/// <param name="Value">The digits as read.</param>
/// <param name="Unit">The unit as written, for example mm, kPa, °C; never empty, no blanks, at most 16 characters.</param>
public sealed record Measured(DecimalText Value, string Unit)
{
    /// <summary>Shorthand for tests and callers with literals; throws <see cref="JobException"/> when either half is malformed.</summary>
    public static Measured Of(string value, string unit) => IsUnit(unit)
        ? new Measured(DecimalText.Parse(value), unit)
        : throw new JobException($"\"{unit}\" is not a unit.", "Write a unit without blanks, for example mm, kPa or °C.");

    internal static bool IsUnit(string unit) => unit.Length is > 0 and <= 16 && !unit.Any(c => char.IsWhiteSpace(c) || char.IsControl(c));

    public override string ToString() => $"{Value} {Unit}";
}

/// <summary>An amount of money: digits and an ISO 4217 code such as EUR. Not converted between currencies.</summary>
/// <param name="Value">The amount; negative for money returned.</param>
/// <param name="Currency">Three capital letters.</param>
public sealed record Money(DecimalText Value, string Currency)
{
    /// <summary>Throws <see cref="JobException"/> when either half is malformed.</summary>
    public static Money Of(string value, string currency) => IsCurrency(currency)
        ? new Money(DecimalText.Parse(value), currency)
        : throw new JobException($"\"{currency}\" is not a currency code.", "Write the three-letter code, for example EUR.");

    internal static bool IsCurrency(string code) => code.Length == 3 && code.All(char.IsAsciiLetterUpper);

    public override string ToString() => $"{Value} {Currency}";
}
