using System.Globalization;
using Undercowl.Knowledge;

namespace Undercowl.Diagnosis.Engine;

/// <summary>What can trade places on an engine: like parts of which there are several, and the outputs of a part that is alone.</summary>
internal static class Exchanges
{
    /// <summary>The places between which parts of this kind are exchanged; fewer than two when there is nothing to exchange.</summary>
    public static string[] Places(EngineModel model, PartKind kind)
    {
        PartInstance[] parts = [.. model.Parts.Where(p => p.Kind.Id == kind.Id)];
        return !kind.Swappable ? []
            : parts is [var alone] && Outputs(model, alone) ? [.. alone.Cylinders.Select(c => string.Create(CultureInfo.InvariantCulture, $"cyl:{c}"))]
            : [.. parts.Select(p => p.Place)];
    }

    /// <summary>True when the part has something for each of its cylinders, so that two of them can be told apart.</summary>
    public static bool Outputs(EngineModel model, PartInstance part) => Array.Exists(model.AspectsOf[part.Index], a => a.Position >= 0);

    /// <summary>The kinds of this engine of which something can be exchanged.</summary>
    public static IEnumerable<PartKind> Kinds(EngineModel model) =>
        model.Parts.Select(p => p.Kind).DistinctBy(k => k.Id).Where(k => Places(model, k).Length > 1);
}
