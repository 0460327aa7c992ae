using Undercowl.Diagnosis.Engine;
using Undercowl.Knowledge;

namespace Undercowl.Diagnosis.Graph;

/// <summary>
/// A whole set-up laid over the knowledge: for the engine and for each cylinder the values that hold. Keys are written
/// <c>key</c> or <c>key@place</c>; what is not named is at its default. Names that are no set-up keys (settings of a
/// tool) are passed over.
/// </summary>
internal sealed class SetUpState
{
    private readonly Dictionary<string, SetUpValue> _engine = [];
    private readonly Dictionary<(string Key, int Cylinder), SetUpValue> _cylinders = [];
    private readonly EngineModel _model;

    public SetUpState(EngineModel model, IReadOnlyDictionary<string, string> values)
    {
        _model = model;
        foreach (var (name, text) in values)
        {
            var at = name.IndexOf('@', StringComparison.Ordinal);
            var key = model.SetUpKey(at < 0 ? name : name[..at]);
            var value = key?.Values.FirstOrDefault(v => v.Id == text);
            if (key is null || value is null)
            {
                continue;
            }

            if (at < 0)
            {
                _engine[key.Id] = value;
                continue;
            }

            // A place that this layout has not is kept in the log and has no effect.
            if (!LayoutPlaces.TryCylinders(model.Layout, name[(at + 1)..], out var cylinders))
            {
                continue;
            }

            foreach (var cylinder in cylinders)
            {
                _cylinders[(key.Id, cylinder)] = value;
            }
        }
    }

    /// <summary>The value of a key in a lane: the lane's own, else the engine's, else the default.</summary>
    public string Value(string key, int cylinder) =>
        _cylinders.TryGetValue((key, cylinder), out var own) ? own.Id
        : _engine.TryGetValue(key, out var all) ? all.Id
        : _model.SetUpKey(key)?.Default ?? "";

    /// <summary>
    /// The values in force in a lane; for the engine as a whole (cylinder 0) also those of the lanes of a seat that serves only some: what is
    /// unplugged in one lane no longer bears on what all share.
    /// </summary>
    public IEnumerable<SetUpValue> InForce(int cylinder, PartInstance seat) => cylinder != 0 || seat.Cylinders.Length == _model.Layout.Cylinders
        ? InForce(cylinder)
        : InForce(0).Concat(_cylinders.Where(c => seat.Serves(c.Key.Cylinder)).Select(c => c.Value)).Distinct();

    /// <summary>The values in force in a lane; only the engine's for cylinder 0.</summary>
    public IEnumerable<SetUpValue> InForce(int cylinder)
    {
        foreach (var (key, value) in _engine)
        {
            if (cylinder == 0 || !_cylinders.ContainsKey((key, cylinder)))
            {
                yield return value;
            }
        }

        if (cylinder == 0)
        {
            yield break;
        }

        foreach (var ((_, at), value) in _cylinders)
        {
            if (at == cylinder)
            {
                yield return value;
            }
        }
    }
}
