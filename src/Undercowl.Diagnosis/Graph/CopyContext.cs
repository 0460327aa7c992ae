using Undercowl.Diagnosis.History;

namespace Undercowl.Diagnosis.Graph;

/// <summary>In which engine and set-up a quantity is copied.</summary>
/// <param name="State">Parts, versions and occasions.</param>
/// <param name="SetUp">The interventions in force.</param>
/// <param name="Provoked">
/// When not null, faults that come and go show, and so do those whose trigger this job has met (set-up key and value): used
/// to ask whether a repair will last. A trigger that nobody has met says nothing about this job.
/// </param>
internal sealed record CopyContext(EngineState State, SetUpState SetUp, IReadOnlySet<(string Key, string Value)>? Provoked = null);
