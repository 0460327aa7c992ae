namespace Undercowl.Diagnosis.Answers;

/// <summary>Every number that touched the belief in a cause.</summary>
/// <param name="Version">Version of this document's form.</param>
/// <param name="Cause">The cause's id.</param>
/// <param name="Name">In words.</param>
/// <param name="AsFound">Probability as found.</param>
/// <param name="Factors">Each number once, however often it was used: what was read first, then the priors, likeliest condition first.</param>
/// <param name="Changed">With other numbers in the place of some: the likeliest causes before and after; null when none was changed.</param>
public sealed record AuditAnswer(int Version, string Cause, string Name, double AsFound, IReadOnlyList<FactorAnswer> Factors, IReadOnlyList<ChangedCause>? Changed = null);

/// <summary>A cause's probability as found with the numbers as they stand, and with others.</summary>
public sealed record ChangedCause(string Cause, string Name, double AsFound, double Instead);

/// <summary>A number of the knowledge, or of the engine's own figures, that a belief rests on.</summary>
/// <param name="Address">The number's address in the knowledge; for the engine's own figure its entry.</param>
/// <param name="Value">As used.</param>
/// <param name="Unit">Its unit; null for chances and ratios.</param>
/// <param name="Source">Id of its source; null where none is given.</param>
/// <param name="SourceKind">publication, common-practice, from-memory, estimate, or entered for the engine's own figure.</param>
/// <param name="Cite">The source in words.</param>
/// <param name="Use">complaint, reading, hand, tool, spec, physics, remedy, set-up, intermittent, given or prior.</param>
/// <param name="What">What it is the chance or size of, in words.</param>
/// <param name="Stands">File and line in the knowledge, where the list of them is at hand.</param>
public sealed record FactorAnswer(
    string Address, double Value, string? Unit, string? Source, string SourceKind, string Cite, string Use, string What, string? Stands = null);
