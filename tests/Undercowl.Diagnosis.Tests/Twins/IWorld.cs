namespace Undercowl.Diagnosis.Tests.Twins;

/// <summary>One way in which everything that is left to chance may have come out.</summary>
internal interface IWorld
{
    /// <summary>How the chance of that name came out: an index into its chances. The same name comes out the same.</summary>
    int Draw(string name, double[] chances);
}
