using System.Globalization;
using System.Text;
using Undercowl.Diagnosis.Engine;
using Undercowl.Knowledge;

namespace Undercowl.Diagnosis.Graph;

/// <summary>
/// A whole set-up laid over the knowledge: for the engine and for each cylinder the values that hold. Keys are written
/// <c>key</c> or <c>key@place</c>; what is not named is at its default. Names that are no set-up keys (settings of a
/// tool) are passed over. Unchangeable, and several threads may share it.
/// </summary>
internal sealed class SetUpState
{
    private readonly Dictionary<string, SetUpValue> _engine = [];
    private readonly Dictionary<(string Key, int Cylinder), SetUpValue> _cylinders = [];
    private readonly EngineModel _model;
    private readonly SetUpValue[][] _inForce;
    private readonly int[] _seenBy;

    public SetUpState(EngineModel model, IReadOnlyDictionary<string, string> values)
    {
        _model = model;
        _seenBy = new int[model.QuantityCount * (model.Layout.Cylinders + 1)];
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

        _inForce = [.. Enumerable.Range(0, model.Layout.Cylinders + 1).Select(c => In(c).Where(Acts).ToArray())];
    }

    /// <summary>The value of a key in a lane: the lane's own, else the engine's, else the default.</summary>
    public string Value(string key, int cylinder) =>
        _cylinders.TryGetValue((key, cylinder), out var own) ? own.Id
        : _engine.TryGetValue(key, out var all) ? all.Id
        : _model.SetUpKey(key)?.Default ?? "";

    /// <summary>
    /// The values in force in a lane that change something; for the engine as a whole (cylinder 0) also those of the lanes of a seat that
    /// serves only some: what is unplugged in one lane no longer bears on what all share.
    /// </summary>
    public SetUpValue[] InForce(int cylinder, PartInstance seat) => cylinder != 0 || _cylinders.Count == 0 || seat.Cylinders.Length == _model.Layout.Cylinders
        ? InForce(cylinder)
        : [.. InForce(0).Concat(_cylinders.Where(c => seat.Serves(c.Key.Cylinder) && Acts(c.Value)).Select(c => c.Value)).Distinct()];

    /// <summary>The values in force in a lane that change something; only the engine's for cylinder 0.</summary>
    public SetUpValue[] InForce(int cylinder) => _inForce[cylinder];

    /// <summary>
    /// A number of what there is here that bears on a quantity in a lane: where two set-ups have the same, the quantity is the same in both.
    /// </summary>
    public int SeenBy(QuantityHere quantity, int cylinder)
    {
        var place = quantity.Index * _inForce.Length + cylinder;
        return _seenBy[place] is > 0 and var known ? known : _seenBy[place] = Number(quantity, cylinder);
    }

    private int Number(QuantityHere quantity, int cylinder)
    {
        var text = new StringBuilder();
        foreach (var (key, value) in _engine)
        {
            if (quantity.Hears.Contains(key))
            {
                text.Append(key).Append('=').Append(value.Id).Append(';');
            }
        }

        foreach (var ((key, at), value) in _cylinders)
        {
            // What a lane shares with others hears all lanes.
            if (quantity.HearsInAllLanes.Contains(key) || ((cylinder == 0 || cylinder == at) && quantity.Hears.Contains(key)))
            {
                text.Append(CultureInfo.InvariantCulture, $"{key}@{at}={value.Id};");
            }
        }

        return _model.NumberOf(text.ToString());
    }

    private IEnumerable<SetUpValue> In(int cylinder) => _engine.Where(e => cylinder == 0 || !_cylinders.ContainsKey((e.Key, cylinder))).Select(e => e.Value)
        .Concat(_cylinders.Where(c => cylinder != 0 && c.Key.Cylinder == cylinder).Select(c => c.Value));

    private static bool Acts(SetUpValue value) => value.Without.Count + value.KnownGood.Count + value.Cuts.Count + value.Sets.Count + value.Lifts.Count > 0;
}
