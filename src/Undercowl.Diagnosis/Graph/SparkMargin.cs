using Undercowl.Diagnosis.Engine;
using Undercowl.Knowledge;
using Undercowl.Physics;

namespace Undercowl.Diagnosis.Graph;

/// <summary>
/// Available against required voltage at a plug. Inputs in order: the quantity that holds the available kilovolts, the
/// one that holds the shunt in megohms (no number: none), the one that holds the gap in millimetres. The ratio of available
/// (after the shunt) to required decides between the three levels.
/// </summary>
internal static class SparkMargin
{
    public static Func<int[], int> Of(EngineModel model, Quantity quantity)
    {
        var available = Numbers(model, quantity.Inputs[0].Quantity);
        var shunt = Numbers(model, quantity.Inputs[1].Quantity);
        var gap = Numbers(model, quantity.Inputs[2].Quantity);
        var (good, weak) = (Parameter(model, quantity, "good-at"), Parameter(model, quantity, "weak-at"));
        var inCylinder = quantity.Combine == Combination.SparkInCylinder;
        var (bar, kelvin) = inCylinder ? (Parameter(model, quantity, "pressure-bar"), Parameter(model, quantity, "gas-kelvin")) : (0, 0);
        var (henry, picofarad) = (Parameter(model, quantity, "secondary-henry"), Parameter(model, quantity, "secondary-picofarad"));
        var stepDriven = Parameter(model, quantity, "step-driven") > 0;
        return levels =>
        {
            if (available[levels[0]] is not > 0 || gap[levels[2]] is not > 0)
            {
                return 2;
            }

            var kept = shunt[levels[1]] is { } megohm ? Kept(stepDriven, ShuntDamping.Ratio(henry, picofarad, megohm)) : 1;
            var wanted = inCylinder
                ? PlugVoltageDemand.RequiredKilovolts(gap[levels[2]]!.Value, bar, kelvin)
                : UniformFieldGap.BreakdownPeakKilovolts(gap[levels[2]]!.Value);
            var margin = available[levels[0]]!.Value * kept / wanted;
            return margin >= good ? 0 : margin >= weak ? 1 : 2;
        };
    }

    private static double Kept(bool stepDriven, double damping) =>
        stepDriven ? ShuntedCapacitorDischargePeak.Ratio(damping) : ShuntedInductivePeak.Ratio(damping);

    /// <summary>A quantity's numbers by level, for this layout; null where a level has none.</summary>
    public static double?[] Numbers(EngineModel model, string quantity)
    {
        var of = model.Quantity(quantity);
        return [.. of.Levels.Select(level => of.Numbers.FirstOrDefault(n => n.Level == level && n.Only.Holds(model.Layout))?.Value)];
    }

    private static double Parameter(EngineModel model, Quantity quantity, string name) =>
        quantity.Parameters.FirstOrDefault(p => p.Name == name && p.Only.Holds(model.Layout))?.Value
        ?? throw new DiagnosisException($"The quantity {quantity.Id} lacks the parameter {name} for the layout {model.Layout.Id}.", "Add it to its parameters.");
}
