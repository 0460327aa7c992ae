namespace Undercowl.Inference;

/// <summary>
/// A table of a sum that is under way, with what went into it: the leaves, by their number, and the powers of two that were taken out
/// of its values.
/// </summary>
internal sealed record Part(Table Table, int[] Leaves, long Exponent);
