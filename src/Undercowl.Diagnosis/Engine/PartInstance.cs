using Undercowl.Knowledge;

namespace Undercowl.Diagnosis.Engine;

/// <summary>
/// One physical part: a kind, the place it sat at when the engine came in, and the cylinders that place serves. The place
/// names the part for good; after a swap it may sit elsewhere.
/// </summary>
internal sealed record PartInstance(int Index, PartKind Kind, string Place, int[] Cylinders)
{
    public string Id { get; } = $"{Kind.Id}@{Place}";

    /// <summary>True when the engine has no other of this kind, so that its name needs no place.</summary>
    public bool Alone { get; init; }

    public bool Serves(int cylinder) => Array.IndexOf(Cylinders, cylinder) >= 0;
}
