using Undercowl.Knowledge.Checking;

namespace Undercowl.Diagnosis;

/// <summary>What was probably meant by a name that is not known, as a sentence for the user.</summary>
public static class Near
{
    /// <summary>"Did you mean …?", or the names that there are when they are few.</summary>
    public static string Mend(string given, IEnumerable<string> known)
    {
        var mend = NearNames.Mend(given, known);
        return char.ToUpperInvariant(mend[0]) + mend[1..] + (mend.EndsWith('?') ? "" : ".");
    }
}
