namespace Undercowl.Cli.Documents;

/// <summary>Why a command did not do what it was asked.</summary>
/// <param name="Version">Version of this document's form.</param>
/// <param name="Refused">What is wrong and how to mend it; also on the error stream.</param>
/// <param name="Exit">The exit code.</param>
internal sealed record RefusedAnswer(int Version, string Refused, int Exit);
