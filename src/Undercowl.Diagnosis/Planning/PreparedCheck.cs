using Undercowl.Diagnosis.Engine;
using Undercowl.Diagnosis.Graph;
using Undercowl.Diagnosis.History;
using Undercowl.Knowledge;

namespace Undercowl.Diagnosis.Planning;

/// <summary>A check at a place of an engine that stands in a certain way; nothing here hangs on what was found.</summary>
/// <param name="Check">The check.</param>
/// <param name="Place">Where.</param>
/// <param name="SetUp">Its whole set-up.</param>
/// <param name="State">The same, laid over the knowledge.</param>
/// <param name="Without">The set-up with the engine's own parts in the place of known-good ones; null when none stand in.</param>
/// <param name="Hazards">Its dangers in that set-up.</param>
/// <param name="Impossible">Values of the set-up that cannot be had where a quantity has one of some levels.</param>
internal sealed record PreparedCheck(
    Check Check, string Place, IReadOnlyDictionary<string, string> SetUp, SetUpState State, SetUpState? Without, HashSet<string> Hazards, (SetUpValue Value, string Quantity, OneOrMore Levels)[] Impossible)
{
    /// <summary>The same in the heat in which the complaint shows, where the engine has another one now.</summary>
    public PreparedCheck? InHeat { get; init; }

    /// <param name="model">The engine.</param>
    /// <param name="check">The check.</param>
    /// <param name="place">Where.</param>
    /// <param name="standing">The engine as it stands.</param>
    /// <param name="heat">Another heat than it has now, or null.</param>
    public static PreparedCheck Of(EngineModel model, Check check, string place, StandingEngine standing, Dictionary<string, string>? heat)
    {
        var setUp = SetUpResolution.Of(model, check, place, standing, heat?.Where(h => !check.SetUp.ContainsKey(h.Key)).ToDictionary());
        string[] standIn = [.. setUp.Keys.Where(name => name.Split('@') is [_, _] && Value(name)?.KnownGood.Count > 0)];
        return new PreparedCheck(
            check,
            place,
            setUp,
            new SetUpState(model, setUp),
            standIn.Length == 0 ? null : new SetUpState(model, setUp.Where(s => !standIn.Contains(s.Key)).ToDictionary()),
            Candidates.Hazards(model, check, setUp),
            [.. setUp.Keys.Select(Value).OfType<SetUpValue>().SelectMany(v => v.Impossible, (v, i) => (v, i.Key, i.Value))]);

        SetUpValue? Value(string name) => model.SetUpKey(name.Split('@')[0])?.Values.FirstOrDefault(v => v.Id == setUp[name]);
    }
}
