using Undercowl.Knowledge;

namespace Undercowl.Diagnosis.Readings;

/// <summary>How far the person is doubted who says something.</summary>
internal static class Doubts
{
    /// <summary>Chance (0 to 1) that what was said has nothing to do with the case: by the hand; by hearsay that of the most doubtful; 0 for nobody named.</summary>
    public static double Of(KnowledgeBase knowledge, string? hand, bool hearsay) =>
        hearsay && knowledge.Hands.Count > 0 ? knowledge.Hands.Max(h => h.Doubt) : knowledge.Hands.FirstOrDefault(h => h.Id == hand)?.Doubt ?? 0;
}
