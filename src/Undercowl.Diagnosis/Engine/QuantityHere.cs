using Undercowl.Knowledge;

namespace Undercowl.Diagnosis.Engine;

/// <summary>A quantity in one layout, and the set-up keys that bear on it, by way of what it follows from too.</summary>
/// <param name="Quantity">The quantity.</param>
/// <param name="Index">Its number among all.</param>
/// <param name="Hears">Ids of all set-up keys that can change it.</param>
/// <param name="HearsInAllLanes">Those of them that change something all lanes share, whichever lane they are of.</param>
internal sealed record QuantityHere(Quantity Quantity, int Index, IReadOnlySet<string> Hears, IReadOnlySet<string> HearsInAllLanes)
{
    /// <summary>All quantities of an engine.</summary>
    public static Dictionary<string, QuantityHere> All(EngineModel model)
    {
        var found = new Dictionary<string, QuantityHere>();
        var underWay = new HashSet<string>();
        foreach (var quantity in model.Knowledge.Quantities)
        {
            Find(quantity);
        }

        return found;

        QuantityHere? Find(Quantity quantity)
        {
            // What follows from itself is refused where it is asked for.
            if (found.TryGetValue(quantity.Id, out var known) || !underWay.Add(quantity.Id))
            {
                return known;
            }

            var own = Own(model, quantity);
            var (hears, all) = (own.ToHashSet(), quantity.Per == QuantityScope.Engine ? own.ToHashSet() : []);
            foreach (var input in quantity.Inputs)
            {
                if (model.Knowledge.Quantities.FirstOrDefault(q => q.Id == input.Quantity) is { } other && Find(other) is { } from)
                {
                    hears.UnionWith(from.Hears);
                    all.UnionWith(quantity.Per == QuantityScope.Engine ? from.Hears : from.HearsInAllLanes);
                }
            }

            return found[quantity.Id] = new QuantityHere(quantity, found.Count, hears, all);
        }
    }

    /// <summary>The keys that bear on what the quantity itself hears, or on the parts that hold it down.</summary>
    private static HashSet<string> Own(EngineModel model, Quantity quantity)
    {
        var bearing = model.Knowledge.Parts.Where(p => p.Aspects.Any(a => a.Conditions.Any(c => c.Effects.ContainsKey(quantity.Id)))).ToArray();
        var kinds = bearing.Select(p => p.Id).ToHashSet();
        HashSet<string> keys = [.. bearing.SelectMany(p => p.Aspects).SelectMany(a => a.Conditions).Where(c => c.Effects.ContainsKey(quantity.Id)).SelectMany(c => c.When.Keys)];
        keys.UnionWith(model.Knowledge.SetUps
            .Where(k => k.Values.Any(v => v.Sets.ContainsKey(quantity.Id) || v.Lifts.ContainsKey(quantity.Id) || v.Cuts.ContainsKey(quantity.Id) || v.Without.Concat(v.KnownGood).Any(kinds.Contains)))
            .Select(k => k.Id));
        return keys;
    }
}
