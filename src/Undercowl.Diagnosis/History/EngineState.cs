using Undercowl.Diagnosis.Engine;

namespace Undercowl.Diagnosis.History;

/// <summary>
/// The engine after some of the job's deeds: which part sits at which seat, which version of each condition holds, and
/// which occasion each part is in. Unchangeable; a deed gives another.
/// </summary>
/// <param name="Occupant">Seat index to the index of the part sitting there.</param>
/// <param name="Ends">Part and cylinder to the cylinder whose output serves it, where outputs of one part were exchanged.</param>
/// <param name="Version">Aspect index to the node of its present version.</param>
/// <param name="Occasion">Part index to the entry that began its present occasion.</param>
internal sealed record EngineState(
    int[] Occupant, IReadOnlyDictionary<(int Part, int Cylinder), int> Ends, int[] Version, string[] Occasion)
{
    public const string Opening = "opening";

    /// <summary>The aspect that a bearing's seat has now: of the part sitting there, at the matching position.</summary>
    public AspectInstance? At(EngineModel model, Bearing bearing) => At(model, bearing.Seat, bearing.Aspect, bearing.Position);

    public AspectInstance? At(EngineModel model, PartInstance seat, string aspect, int position)
    {
        var part = model.Parts[Occupant[seat.Index]];
        if (position >= 0 && Ends.TryGetValue((part.Index, part.Cylinders[position]), out var other))
        {
            position = Array.IndexOf(part.Cylinders, other);
        }

        return Array.Find(model.AspectsOf[part.Index], a => a.Aspect.Id == aspect && a.Position == position);
    }
}
