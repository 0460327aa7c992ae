namespace Undercowl.Knowledge;

/// <summary>One number of the knowledge.</summary>
/// <param name="Address">
/// The way to it by names: the folder or file, the record's id, and so on, as <c>parts/PART/aspects/ASPECT/conditions/CONDITION/prior</c>. Entries without an
/// id go by their name, item, level or place in the list; the second of one name is <c>NAME#2</c>.
/// </param>
/// <param name="Path">The way to it by places in the compiled JSON (RFC 6901).</param>
/// <param name="Value">As it stands.</param>
/// <param name="Source">Id of the source that stands nearest above it; null where none does.</param>
public sealed record KnowledgeNumber(string Address, string Path, double Value, string? Source);
