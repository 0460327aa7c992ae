namespace Undercowl.Jobs;

/// <summary>One thing wrong with a job, in the technician's words.</summary>
/// <param name="Source">The name of the input as the user knows it, mostly a file name. Empty when the input has no name.</param>
/// <param name="Line">The line in that input, counted from 1; 0 when no single line is meant.</param>
/// <param name="What">What is wrong, one sentence.</param>
/// <param name="Mend">What to do about it, one sentence.</param>
public sealed record JobProblem(string Source, int Line, string What, string Mend)
{
    /// <summary>The problem as one line of text: where, what, and how to mend it.</summary>
    public override string ToString() => (Source, Line) switch
    {
        ("", 0) => $"{What} {Mend}",
        ("", _) => $"line {Line}: {What} {Mend}",
        (_, 0) => $"{Source}: {What} {Mend}",
        _ => $"{Source}, line {Line}: {What} {Mend}",
    };
}
