namespace Undercowl.Diagnosis;

/// <summary>A request that cannot be met, in the user's words, and how to mend it.</summary>
public sealed class DiagnosisException(string what, string mend) : Exception($"{what} {mend}")
{
    public string What { get; } = what;

    public string Mend { get; } = mend;
}
