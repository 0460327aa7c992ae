namespace Undercowl.Planning;

/// <summary>
/// A troubleshooting problem, or a question put to the planner, that makes no sense as given. The message names the
/// array and the place in it, says what was found there, and what it should hold instead.
/// </summary>
/// <remarks>It is a caller's bug, never an outcome of planning: a problem that nothing can mend plans to refer.</remarks>
public sealed class PlanningException : Exception
{
    internal PlanningException(string array, int? index, string found, string mend)
        : base($"{array}{(index is { } i ? $"[{i}]" : "")} {found}; {mend}.")
    {
        Array = array;
        Index = index;
    }

    /// <summary>Name of the array or number at fault, as the problem spells it: <c>Checks.OutcomeProbability</c>.</summary>
    public string Array { get; }

    /// <summary>Place in the flat array; null when the whole array or a single number is at fault.</summary>
    public int? Index { get; }
}
