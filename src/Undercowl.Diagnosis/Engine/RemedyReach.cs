using Undercowl.Knowledge;

namespace Undercowl.Diagnosis.Engine;

/// <summary>What a remedy changes: the part at its seat, and the parts that its work mends besides.</summary>
internal static class RemedyReach
{
    /// <summary>Seats whose parts the remedy done at a seat acts on, that seat first.</summary>
    public static IEnumerable<PartInstance> Seats(EngineModel model, Remedy remedy, PartInstance seat) =>
    [
        seat,
        .. model.Parts.Where(p => p.Index != seat.Index && p.Cylinders.Any(seat.Serves) && remedy.Cures.Any(c => c.Part == p.Kind.Id)),
    ];

    /// <summary>How the remedy mends a condition of a part that it acts on; null when it does not.</summary>
    public static Cure? CureOf(Remedy remedy, AspectInstance aspect, string condition) => remedy.Cures.FirstOrDefault(c =>
        Touches(remedy, c, aspect) && (c.Conditions.Count == 0 || c.Conditions.Contains(condition)));

    public static bool Touches(Remedy remedy, AspectInstance aspect) => remedy.Cures.Any(c => Touches(remedy, c, aspect));

    private static bool Touches(Remedy remedy, Cure cure, AspectInstance aspect) =>
        (cure.Part ?? remedy.Part) == aspect.Part.Kind.Id && cure.Aspect == aspect.Aspect.Id;
}
