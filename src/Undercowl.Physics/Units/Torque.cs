namespace Undercowl.Physics;

/// <summary>
/// Torque conversions, exact from the pound, the foot and standard gravity (NIST SP 811, appendix B).
/// Any number is converted; NaN and infinity pass through.
/// </summary>
public static class Torque
{
    /// <summary>N m per lbf ft: 0.45359237 x 9.80665 x 0.3048 = 1.3558179483314...</summary>
    public const double NewtonMetresPerPoundForceFoot = 0.45359237 * 9.80665 * 0.3048;

    /// <summary>N m per lbf in: a twelfth of the above. A chart in lbf in read as lbf ft overtightens twelvefold.</summary>
    public const double NewtonMetresPerPoundForceInch = 0.45359237 * 9.80665 * 0.0254;

    /// <summary>N m per kgf m, exact.</summary>
    public const double NewtonMetresPerKilogramForceMetre = 9.80665;

    public static double NewtonMetresFromPoundForceFeet(double poundForceFeet) => poundForceFeet * NewtonMetresPerPoundForceFoot;

    public static double PoundForceFeetFromNewtonMetres(double newtonMetres) => newtonMetres / NewtonMetresPerPoundForceFoot;

    public static double NewtonMetresFromPoundForceInches(double poundForceInches) => poundForceInches * NewtonMetresPerPoundForceInch;

    public static double PoundForceInchesFromNewtonMetres(double newtonMetres) => newtonMetres / NewtonMetresPerPoundForceInch;

    public static double NewtonMetresFromKilogramForceMetres(double kilogramForceMetres) =>
        kilogramForceMetres * NewtonMetresPerKilogramForceMetre;

    public static double KilogramForceMetresFromNewtonMetres(double newtonMetres) =>
        newtonMetres / NewtonMetresPerKilogramForceMetre;
}
