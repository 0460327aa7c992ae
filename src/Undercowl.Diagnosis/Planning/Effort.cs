using Undercowl.Diagnosis.Engine;
using Undercowl.Diagnosis.History;
using Undercowl.Knowledge;

namespace Undercowl.Diagnosis.Planning;

/// <summary>
/// Minutes that a check takes from the engine as it stands: its own, fewer when the check before shared its preparation, and
/// those of the set-up states it brings about or undoes.
/// </summary>
internal sealed class Effort(EngineModel model, StandingEngine standing, string? openCluster, double sameCluster)
{
    public double Minutes(Check check, IReadOnlyDictionary<string, string> setUp) =>
        (check.Cluster is not null && check.Cluster == openCluster ? check.Again ?? check.Minutes * sameCluster : check.Minutes) + SetUp(setUp);

    private double SetUp(IReadOnlyDictionary<string, string> setUp)
    {
        var minutes = 0.0;
        foreach (var (name, wanted) in setUp)
        {
            var at = name.IndexOf('@', StringComparison.Ordinal);
            if (model.SetUpKey(at < 0 ? name : name[..at]) is not { } key || standing.Left.GetValueOrDefault(name, key.Default) is var now && now == wanted)
            {
                continue;
            }

            // Undoing a state takes what bringing it about took; heat has no state to undo, only another one to reach.
            var moved = wanted == key.Default && !key.EndsOccasion ? now : wanted;
            minutes += key.Values.FirstOrDefault(v => v.Id == moved)?.Minutes ?? 0;
        }

        return minutes;
    }
}
