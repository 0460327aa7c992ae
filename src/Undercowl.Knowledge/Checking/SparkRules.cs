namespace Undercowl.Knowledge.Checking;

/// <summary>The spark at a plug by physics: three inputs that amount to kilovolts, megohms and millimetres, and its parameters.</summary>
internal static class SparkRules
{
    private static readonly (string Role, string Unit)[] Roles = [("the available voltage", "kV"), ("the shunt", "Mohm"), ("the gap", "mm")];
    private static readonly string[] Always = ["good-at", "weak-at", "secondary-henry", "secondary-picofarad", "step-driven"];
    private static readonly string[] InCylinder = ["pressure-bar", "gas-kelvin"];

    public static void Check(Inspection inspection, Quantity quantity, string path)
    {
        if (quantity.Inputs.Count != Roles.Length)
        {
            inspection.Report(path.Member("inputs"), "a spark follows from three inputs", "list the available voltage, the shunt and the gap, in this order");
            return;
        }

        for (var i = 0; i < Roles.Length; i++)
        {
            if (inspection.Quantities[quantity.Inputs[i].Quantity] is { } input)
            {
                Role(inspection, input, Roles[i], path.Member("inputs").Entry(i));
            }
        }

        Parameters(inspection, quantity, path);
    }

    private static void Role(Inspection inspection, Quantity input, (string Role, string Unit) wanted, string path)
    {
        if (input.Numbers.Count == 0 || input.Numbers.Any(n => n.Unit != wanted.Unit))
        {
            inspection.Report(path, $"{input.Id} stands for {wanted.Role}, but its levels are not all told in {wanted.Unit}", $"give {input.Id} numbers with unit: {wanted.Unit}");
            return;
        }

        // A level without a shunt has none; but a best level without voltage or gap could never spark.
        var lacking = wanted.Unit == "Mohm" || input.Levels.Count == 0 ? null
            : inspection.Layouts.All.FirstOrDefault(l => !input.Numbers.Any(n => n.Level == input.Levels[0] && n.Value > 0 && n.Only.Holds(l)));
        if (lacking is not null)
        {
            inspection.Report(path, $"{input.Id} has no number above 0 for its best level in the layout {lacking.Id}", $"give the level {input.Levels[0]} of {input.Id} one that holds there");
        }
    }

    private static void Parameters(Inspection inspection, Quantity quantity, string path)
    {
        IEnumerable<string> wanted = quantity.Combine == Combination.SparkInCylinder ? [.. Always, .. InCylinder] : Always;
        foreach (var name in wanted)
        {
            var given = quantity.Parameters.Where(p => p.Name == name).ToArray();
            if (given.Length == 0)
            {
                inspection.Report(path, $"the parameter {name} of {quantity.Id} is missing", $"add it to parameters, with value, unit and source");
            }
            else if (inspection.Layouts.All.FirstOrDefault(l => !Array.Exists(given, p => p.Only.Holds(l))) is { } lacking)
            {
                inspection.Report(path.Member("parameters"), $"no {name} holds for the layout {lacking.Id}", "add one that does, or one without only at the end");
            }
        }

        for (var i = 0; i < quantity.Parameters.Count; i++)
        {
            inspection.OneOf("parameter of a spark,", quantity.Parameters[i].Name, wanted, path.Member("parameters").Entry(i).Member("name"));
        }
    }
}
