using Undercowl.Diagnosis.Engine;

namespace Undercowl.Diagnosis.Beliefs;

/// <summary>A finding in words, taken apart so that like ones can be said in one breath.</summary>
/// <param name="What">The check.</param>
/// <param name="At">Where, with the word before it; empty for the engine as a whole.</param>
/// <param name="Reading">What it showed.</param>
/// <param name="After">What had last been done to the engine, in brackets; empty for an engine as it came in.</param>
internal sealed record Told(string What, string At, string Reading, string After)
{
    public static Told Complaint { get; } = new("the complaint", "", "", "");

    public static Told Of(EngineModel model, LaidFinding laid) => new(
        laid.Check.Name,
        Words.At(model, laid.Check.At, laid.Finding.Body.Place.Text),
        Words.Reading(laid.Check, laid.Finding.Body.Value),
        LastDone(model, laid));

    /// <summary>A deed after another takes its place: who reads on knows what was done before.</summary>
    private static string LastDone(EngineModel model, LaidFinding laid)
    {
        var swap = laid.Finding.Swaps.Count > 0 ? laid.Finding.Swaps[^1] : null;
        var remedy = laid.Finding.Remedies.Count > 0 ? laid.Finding.Remedies[^1] : null;
        if (remedy is not null && (swap is null || laid.Finding.Entry.Id == remedy.Id || string.CompareOrdinal(remedy.Id.ToString(), swap.Id.ToString()) > 0))
        {
            return $" (after: {model.Knowledge.RemedyOf(remedy.Body.Action)?.Name ?? remedy.Body.Action})";
        }

        return swap is null ? "" : $" ({model.Knowledge.PartOf(swap.Body.Part)?.Name ?? swap.Body.Part}s {Place(swap.Body.A.Text)} and {Place(swap.Body.B.Text)} exchanged)";

        static string Place(string place) => place.StartsWith("cyl:", StringComparison.Ordinal) ? place[4..] : place;
    }
}
