namespace Undercowl.Knowledge.Checking;

/// <summary>Checks that knowledge holds together: that what is named exists and that the numbers can be what they say.</summary>
public static class KnowledgeCheck
{
    /// <summary>All faults and notes; empty for knowledge that is in order.</summary>
    /// <param name="knowledge">What to check; its records fit their types.</param>
    /// <param name="unreadable">
    /// Records that are known to exist though they could not be read, as <c>checks/spark-seen</c>, or whole kinds, as
    /// <c>sources</c>: what names them is not at fault. Default: none.
    /// </param>
    public static IReadOnlyList<KnowledgeFault> Faults(KnowledgeBase knowledge, IReadOnlySet<string>? unreadable = null)
    {
        ArgumentNullException.ThrowIfNull(knowledge);
        var inspection = new Inspection(knowledge, unreadable ?? new HashSet<string>());
        SourceRules.Check(inspection);
        LayoutRules.Check(inspection);
        OnlyRules.Check(inspection);
        PartRules.Check(inspection);
        QuantityRules.Check(inspection);
        SetUpRules.Check(inspection);
        ToolRules.Check(inspection);
        CheckRules.Check(inspection);
        SpecRules.Check(inspection);
        RemedyRules.Check(inspection);
        ComplaintRules.Check(inspection);
        CommonCauseRules.Check(inspection);
        IntakeRules.Check(inspection);
        ProofRules.Check(inspection);
        SafetyRules.Check(inspection);
        AliasRules.Check(inspection);
        NoteRules.Check(inspection);
        return inspection.Faults;
    }
}
