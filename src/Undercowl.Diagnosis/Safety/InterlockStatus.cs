using Undercowl.Knowledge;

namespace Undercowl.Diagnosis.Safety;

/// <summary>How an interlock stands.</summary>
/// <param name="Interlock">The rule.</param>
/// <param name="Clear">False: steps with its hazards are withheld.</param>
/// <param name="Known">False: nothing has been recorded about it, and unknown is not safe.</param>
/// <param name="Missing">The conditions of lifting that are not stated yet, after the last opening.</param>
public sealed record InterlockStatus(Knowledge.Interlock Interlock, bool Clear, bool Known, IReadOnlyList<Option> Missing)
{
    /// <summary>Places not yet smelt clear since the last opening, where smelling states a condition that is still wanted.</summary>
    public IReadOnlyList<string> ToSmell { get; init; } = [];

    /// <summary>Readings of which one is enough, as <c>check choice</c>; none once it was opened, when every condition is wanted.</summary>
    public IReadOnlyList<string> Enough => Clear || Missing.Count > 0 ? []
        : [.. Interlock.ClearedBy.Where(e => e.Check is not null).SelectMany(e => e.Choice?.Values ?? [], (e, choice) => $"{e.Check} {choice}")];

    /// <summary>True when steps with such a hazard must wait.</summary>
    public bool Holds(IEnumerable<string> hazards) => !Clear && Interlock.Withholds.Any(hazards.Contains);

    /// <summary>True when the remedy must wait: for more than what it brings about itself.</summary>
    public bool Holds(Knowledge.Remedy remedy) =>
        Holds(remedy.Hazards) && !(Missing.Count > 0 && Missing.All(m => remedy.Meets.Contains(m.Id)));

    /// <summary>One line for the technician: why, and what would lift it.</summary>
    public string Reason => !Known
        ? $"{Interlock.Name}: nothing recorded, or not since that was disturbed, and unknown is not safe. {Interlock.Reason}"
        : Missing.Count == 0 ? Interlock.Reason : $"{Interlock.Reason} Still wanted: {string.Join(", ", Missing.Select(m => m.Name))}.";
}
