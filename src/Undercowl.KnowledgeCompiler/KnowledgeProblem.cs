namespace Undercowl.KnowledgeCompiler;

/// <summary>Something in the knowledge files that is not as it must be, and how to mend it.</summary>
/// <param name="File">Path as the folder was given, with slashes.</param>
/// <param name="Line">From 1; 1 also for the file as a whole.</param>
/// <param name="Message">What is wrong, without a full stop.</param>
/// <param name="Mend">What to do about it.</param>
public sealed record KnowledgeProblem(string File, int Line, string Message, string Mend)
{
    /// <summary>As printed: <c>file:line: message; mend</c>.</summary>
    public override string ToString() => FormattableString.Invariant($"{File}:{Line}: {Message}; {Mend}");
}
