namespace Undercowl.Physics;

/// <summary>
/// Length conversions, exact by definition (1 in = 25.4 mm, 1 ft = 0.3048 m; NIST SP 811, appendix B).
/// Any number is converted, negative ones too; NaN and infinity pass through: a conversion judges nothing.
/// </summary>
public static class Length
{
    /// <summary>mm per inch, exact.</summary>
    public const double MillimetresPerInch = 25.4;

    /// <summary>mm per thou (0.001 in), exact.</summary>
    public const double MillimetresPerThou = 0.0254;

    /// <summary>m per foot, exact.</summary>
    public const double MetresPerFoot = 0.3048;

    public static double MillimetresFromInches(double inches) => inches * MillimetresPerInch;

    public static double InchesFromMillimetres(double millimetres) => millimetres / MillimetresPerInch;

    /// <summary>Thou is a thousandth of an inch (also called mil), not a thousandth of a millimetre.</summary>
    public static double MillimetresFromThou(double thou) => thou * MillimetresPerThou;

    public static double ThouFromMillimetres(double millimetres) => millimetres / MillimetresPerThou;

    public static double MetresFromFeet(double feet) => feet * MetresPerFoot;

    public static double FeetFromMetres(double metres) => metres / MetresPerFoot;
}
