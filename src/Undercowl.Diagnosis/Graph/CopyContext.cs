using Undercowl.Diagnosis.History;

namespace Undercowl.Diagnosis.Graph;

/// <summary>In which engine and set-up a quantity is copied.</summary>
/// <param name="State">Parts, versions and occasions.</param>
/// <param name="SetUp">The interventions in force.</param>
/// <param name="Provoked">True: every fault with a trigger, or that comes and goes, shows. Used to ask whether a repair will last.</param>
internal sealed record CopyContext(EngineState State, SetUpState SetUp, bool Provoked = false);
