using Undercowl.Knowledge;

namespace Undercowl.Diagnosis.Engine;

/// <summary>
/// Which set-ups an engine has. A value is one of its own when a check of it brings the value about, when what the value does
/// meets something there, or when it does nothing to the graph (as wires that are wiggled).
/// </summary>
internal static class SetUpsHere
{
    /// <summary>The values of a key that this engine can be in; none when the key is not for it.</summary>
    public static SetUpValue[] Values(EngineModel model, SetUpKey key)
    {
        SetUpValue[] others = [.. key.Values.Where(v => v.Id != key.Default && (Used(model, key, v) || Meets(model, v)))];
        return others.Length == 0 ? [] : [.. key.Values.Where(v => v.Id == key.Default || others.Contains(v))];
    }

    /// <summary>The keys that this engine has.</summary>
    public static IEnumerable<SetUpKey> Keys(EngineModel model) => model.Knowledge.SetUps.Where(k => Values(model, k).Length > 0);

    private static bool Used(EngineModel model, SetUpKey key, SetUpValue value) =>
        model.Checks.Any(c => Candidate(model, c) && c.SetUp.Any(s => s.Value == value.Id && s.Key.Split('@')[0] == key.Id));

    /// <summary>A check that has a place on this engine.</summary>
    private static bool Candidate(EngineModel model, Check check) => check.At is "engine" or "cyl" || model.HasPart(check.At);

    private static bool Meets(EngineModel model, SetUpValue value)
    {
        if (value.Without.Count + value.KnownGood.Count + value.Cuts.Count + value.Sets.Count + value.Lifts.Count == 0)
        {
            return true;
        }

        return value.Without.Concat(value.KnownGood).Any(model.HasPart)
            || value.Sets.Keys.Concat(value.Lifts.Keys).Any(q => Follows(model, q))
            || value.Cuts.Any(cut => Inputs(model, cut.Key).Any(i => cut.Value.Contains(i) && Follows(model, i)));
    }

    /// <summary>True when some part of this engine bears on the quantity, itself or through others.</summary>
    private static bool Follows(EngineModel model, string quantity) =>
        model.BearingsOn(quantity, 0).Length > 0 || Inputs(model, quantity).Any(i => Follows(model, i));

    private static IEnumerable<string> Inputs(EngineModel model, string quantity) =>
        model.Quantity(quantity).Inputs.Where(i => i.Only.Holds(model.Layout)).Select(i => i.Quantity);
}
