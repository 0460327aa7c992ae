namespace Undercowl.Cli;

/// <summary>Something that this program will not or cannot do, in the user's words, and how to mend it.</summary>
internal sealed class Refusal(string what, string mend) : Exception($"{what} {mend}");
