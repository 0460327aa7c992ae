namespace Undercowl.Physics.Tests;

/// <summary>
/// Every tolerance of this suite with its reason. Relative unless the name ends in a unit.
/// </summary>
internal static class Tolerances
{
    /// <summary>The same arithmetic in another order: a few hundred units in the last place.</summary>
    public const double Rounding = 1e-13;

    /// <summary>A formula and its inverse through square roots, powers or logarithms.</summary>
    public const double RoundTrip = 1e-11;

    /// <summary>Expected number printed with four or more digits.</summary>
    public const double PrintedFourDigits = 1e-3;

    /// <summary>Expected number printed with three digits or fewer.</summary>
    public const double PrintedThreeDigits = 5e-3;

    /// <summary>Expected number printed with five digits.</summary>
    public const double PrintedFiveDigits = 5e-5;

    /// <summary>Expected number printed with six digits (standard atmosphere).</summary>
    public const double PrintedSixDigits = 5e-6;

    /// <summary>Expected number printed with seven digits or more, where the last may be rounded.</summary>
    public const double PrintedSevenDigits = 1.5e-7;

    /// <summary>Absolute: numbers of order one or ten that pass through a few additions, in the unit compared.</summary>
    public const double AbsoluteRounding = 1e-12;

    /// <summary>Absolute: the same after a division by a narrow table step or through a larger number.</summary>
    public const double AbsoluteRoundTrip = 1e-8;

    /// <summary>Absolute: an expected ratio or current printed with three decimals, its input rounded to three digits.</summary>
    public const double ThreeDecimals = 0.001;

    /// <summary>Absolute: a central difference with a step of 1e-4 loses half the digits.</summary>
    public const double CentralDifference = 1e-6;

    /// <summary>Absolute, probabilities: a few units in the last place of a number near one.</summary>
    public const double Probability = 1e-15;

    /// <summary>Absolute, probabilities: the other library's own error function is good to twelve digits.</summary>
    public const double OtherLibraryProbability = 1e-12;

    /// <summary>The handbook prints its density factors with two decimals, and its corner cell is a hundredth high.</summary>
    public const double DensityFactorTwoDecimals = 0.0075;

    /// <summary>Straight lines across the rows of the same handbook table that are not shipped.</summary>
    public const double NeedleHeldOutRows = 0.015;

    /// <summary>Leaving out a shipped needle row doubles the step, so its curvature error is about four times as large.</summary>
    public const double NeedleLeaveOneOut = 0.03;

    /// <summary>Two needle tables made from different measurements agree within 3 %, in gap as in voltage.</summary>
    public const double NeedleSecondTable = 0.03;

    /// <summary>Beyond the last shipped row, up to the handbook's next one.</summary>
    public const double NeedleExtension = 0.03;

    /// <summary>Peek against the handbook's spheres from 10 kV up.</summary>
    public const double PeekHandbook = 0.02;

    /// <summary>IEC sphere tables claim 3 % below half a diameter, and 5 % above.</summary>
    public const double SphereTable = 0.03;

    /// <summary>As above, spheres further apart than half their diameter.</summary>
    public const double SphereTableWide = 0.05;

    /// <summary>The standards' density factor k is one average for all spheres.</summary>
    public const double DensityToVoltage = 0.025;

    /// <summary>24.22/6.08 against the mean curve of many laboratories, which lies 4 to 7 % higher.</summary>
    public const double UniformFieldMeanCurve = 0.07;

    /// <summary>24.36/6.72 against the same curve.</summary>
    public const double UniformFieldByBarMeanCurve = 0.07;

    /// <summary>Paschen values printed with four or five digits by others.</summary>
    public const double PaschenPrinted = 2e-5;

    /// <summary>The criterion's double exponential enlarges rounding by the size of the avalanche.</summary>
    public const double PaschenCriterion = 1e-9;

    /// <summary>Paschen coefficients in kPa are the Torr ones times a rounded 7.5 instead of 7.50062.</summary>
    public const double PaschenRoundedFactor = 2e-4;

    /// <summary>Percent points: a lead-acid row predicted from its neighbours.</summary>
    public const double ChargeLeaveOneOutPoints = 2;

    /// <summary>Fixed-step integration of the ringing circuit at 20000 steps.</summary>
    public const double Integration = 1e-7;

    /// <summary>Asymptote 1/(2z) at z = 1e6, whose next term is of relative size (ln z)/z^2.</summary>
    public const double Asymptote = 1e-6;

    /// <summary>Cody's approximations carry 16 digits; the argument's own rounding costs two in the tails.</summary>
    public const double NormalCentre = 1e-14;

    /// <summary>Far tail: exp(-z^2/2) at z = -37 multiplies the rounding of z / sqrt 2 by 1400.</summary>
    public const double NormalTail = 1e-12;
}
