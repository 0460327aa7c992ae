using Undercowl.Jobs;

namespace Undercowl.Diagnosis;

/// <summary>A finding of the log that says nothing, because today's knowledge does not know what it names.</summary>
/// <param name="Id">The entry.</param>
/// <param name="Check">The check as it is named there.</param>
/// <param name="Place">Where.</param>
/// <param name="Why">What is not known, and what is.</param>
public sealed record IdleFinding(EntryId Id, string Check, Place Place, string Why);
