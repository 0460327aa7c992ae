namespace Undercowl.Planning.Sequencing;

/// <summary>Benefit per cost, where something for nothing comes before everything else.</summary>
internal static class Ratios
{
    internal static double Of(double benefit, double cost)
    {
        if (!(benefit > 0)) return 0;
        return cost > 0 ? benefit / cost : double.PositiveInfinity;
    }
}
