namespace Undercowl.Knowledge.Checking;

/// <summary>Readings of a tester gap: a setting in millimetres against a quantity in kilovolts.</summary>
internal static class GapRules
{
    public static void Check(Inspection inspection, Check check, string path)
    {
        var model = check.Likelihood;
        if (model.Gap is { } gap && inspection.OneOf("setting of this check,", gap, check.Settings.Select(s => s.Id), path.Member("gap"))
            && check.Settings.First(s => s.Id == gap).Unit is not "mm" and var unit)
        {
            inspection.Report(path.Member("gap"), $"the setting {gap} is in {unit}", "a tester gap is set in mm");
        }

        if (model.Spread <= 0)
        {
            inspection.Report(path.Member("spread"), FormattableString.Invariant($"spread is {model.Spread}"), "write a number above 0");
        }

        if (model.Quantity is null)
        {
            inspection.Report(path, "a gap reads a voltage", "write quantity: and one with numbers in kV");
        }
        else if (inspection.Quantities[model.Quantity] is { } quantity && (quantity.Numbers.Count == 0 || quantity.Numbers.Any(n => n.Unit != "kV")))
        {
            inspection.Report(path.Member("quantity"), $"the levels of {quantity.Id} are not told in kV", $"give {quantity.Id} numbers with unit: kV");
        }

        if (model.GapChoices is { } names)
        {
            Choices(inspection, check, names, path.Member("gap-choices"));
        }

        // A level that cannot show a choice shows it by a slip alone: 1 / 3 of the lasting one, or of the fresh one.
        var gain = model.Outlier is > 0 and var outlier ? 10 * Math.Log10(1 - model.Fresh + model.Fresh / outlier) : double.PositiveInfinity;
        if (gain >= RepeatRule.Most)
        {
            inspection.Report(
                model.Outlier is null ? path : path.Member("outlier"),
                "the same jump seen again and again would weigh far more than seen once",
                FormattableString.Invariant($"give outlier, a lasting slip, of {Math.Max(model.Fresh, 0.001) * 1.01:0.####} or more (fresh is {model.Fresh})"));
        }
    }

    private static void Choices(Inspection inspection, Check check, GapChoices names, string path)
    {
        string[] known = [.. check.Choices.Select(c => c.Id)];
        inspection.OneOf("choice", names.Never, known, path.Member("never"));
        inspection.OneOf("choice", names.Sometimes, known, path.Member("sometimes"));
        inspection.OneOf("choice", names.Always, known, path.Member("always"));
        foreach (var other in known.Except([names.Never, names.Sometimes, names.Always]))
        {
            inspection.Report(path, $"the choice {other} means neither never nor sometimes nor always", "keep three choices");
        }
    }
}
