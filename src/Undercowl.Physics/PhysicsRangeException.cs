using System.Globalization;

namespace Undercowl.Physics;

/// <summary>
/// The one error of this room: a quantity was given that the formula asked for does not cover. It is not a
/// verdict on the engine, and it is never thrown for a value inside the range its message states.
/// </summary>
/// <remarks>
/// NaN is always refused. Infinity is refused wherever the range is finite. The message is complete on its
/// own: what was given, what is allowed, and how to mend it.
/// </remarks>
public sealed class PhysicsRangeException : Exception
{
    public PhysicsRangeException(string quantity, double value, double minimum, double maximum, string unit, string mend)
        : base(string.Create(
            CultureInfo.InvariantCulture,
            $"{quantity} is {value:G6}{Suffix(unit)}; it must be from {minimum:G6} to {maximum:G6}{Suffix(unit)}. {mend}"))
    {
        Quantity = quantity;
        Value = value;
        Minimum = minimum;
        Maximum = maximum;
        Unit = unit;
        Mend = mend;
    }

    /// <summary>For what is refused by kind rather than by size; the numbers are then NaN and the unit empty.</summary>
    public PhysicsRangeException(string quantity, string given, string allowed, string mend)
        : base($"{quantity} is {given}; it must be {allowed}. {mend}")
    {
        Quantity = quantity;
        Value = double.NaN;
        Minimum = double.NaN;
        Maximum = double.NaN;
        Unit = string.Empty;
        Mend = mend;
    }

    /// <summary>What was out of range, in the user's words ("gap", "air pressure").</summary>
    public string Quantity { get; }

    /// <summary>The value given, in <see cref="Unit"/>; NaN when NaN was given or when a kind was refused.</summary>
    public double Value { get; }

    /// <summary>Smallest allowed value, itself allowed; NaN when a kind was refused.</summary>
    public double Minimum { get; }

    /// <summary>Largest allowed value, itself allowed; NaN when a kind was refused.</summary>
    public double Maximum { get; }

    /// <summary>Unit of the three numbers; empty for a pure number.</summary>
    public string Unit { get; }

    /// <summary>What to do about it, one or two sentences.</summary>
    public string Mend { get; }

    /// <summary>Throws unless minimum &lt;= value &lt;= maximum; written so that NaN throws.</summary>
    internal static void ThrowIfOutside(
        double value, double minimum, double maximum, string quantity, string unit, string mend)
    {
        if (!(value >= minimum && value <= maximum))
        {
            throw new PhysicsRangeException(quantity, value, minimum, maximum, unit, mend);
        }
    }

    private static string Suffix(string unit) => unit.Length == 0 ? string.Empty : " " + unit;
}
