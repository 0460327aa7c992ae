using System.Globalization;
using Undercowl.Knowledge;

namespace Undercowl.Diagnosis.Engine;

/// <summary>What can trade places on an engine: like parts of which there are several, and the outputs of one part.</summary>
internal static class Exchanges
{
    /// <summary>The places between which parts of this kind, or their outputs, are exchanged; fewer than two when there is nothing to exchange.</summary>
    public static string[] Places(EngineModel model, PartKind kind)
    {
        PartInstance[] parts = [.. model.Parts.Where(p => p.Kind.Id == kind.Id)];
        string[] whole = parts.Length > 1 ? [.. parts.Select(p => p.Place)] : [];
        return !kind.Swappable ? [] : [.. whole, .. parts.Where(p => Outputs(model, p)).SelectMany(p => p.Cylinders).Select(Cylinder).Except(whole)];
    }

    /// <summary>True when the two places have two like parts, or two outputs of one part.</summary>
    public static bool Between(EngineModel model, PartKind kind, string a, string b)
    {
        var (first, second) = (At(a), At(b));
        return first is not null && second is not null ? first.Cylinders.Length == second.Cylinders.Length
            : first is null && second is null && Array.Exists(model.Parts, p => p.Kind.Id == kind.Id && Outputs(model, p) && p.Cylinders.Count(c => Cylinder(c) == a || Cylinder(c) == b) == 2);

        PartInstance? At(string place) => Array.Find(model.Parts, p => p.Kind.Id == kind.Id && p.Place == place);
    }

    /// <summary>True when the part has something for each of its cylinders, so that two of them can be told apart.</summary>
    public static bool Outputs(EngineModel model, PartInstance part) => Array.Exists(model.AspectsOf[part.Index], a => a.Position >= 0);

    private static string Cylinder(int number) => string.Create(CultureInfo.InvariantCulture, $"cyl:{number}");

    /// <summary>The kinds of this engine of which something can be exchanged.</summary>
    public static IEnumerable<PartKind> Kinds(EngineModel model) =>
        model.Parts.Select(p => p.Kind).DistinctBy(k => k.Id).Where(k => Places(model, k).Length > 1);
}
