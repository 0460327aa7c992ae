using System.Globalization;
using Undercowl.Diagnosis.Engine;
using Undercowl.Knowledge;

namespace Undercowl.Diagnosis.Graph;

/// <summary>Copies of quantities in one context: the graph that the knowledge draws, with the set-up's interventions made.</summary>
/// <param name="conditions">The chance nodes.</param>
/// <param name="context">In which engine and set-up.</param>
/// <param name="made">The copies of the same engine in all set-ups: a quantity that hears nothing of what sets them apart is one.</param>
internal sealed class QuantityCopies(ConditionNodes conditions, CopyContext context, Dictionary<(int Quantity, int Cylinder, int Seen), Signal> made)
{
    private readonly HashSet<(string Quantity, int Cylinder)> _underWay = [];
    private readonly EngineModel _model = conditions.Model;

    public CopyContext Context => context;

    /// <summary>The level of a quantity in a lane, or in the engine as a whole (cylinder 0).</summary>
    public Signal Of(string id, int cylinder)
    {
        var quantity = _model.Quantity(id);
        if (quantity.Per == QuantityScope.Engine)
        {
            cylinder = 0;
        }

        var here = _model.Here(id);
        var key = (here.Index, cylinder, context.SetUp.SeenBy(here, cylinder));
        if (made.TryGetValue(key, out var known))
        {
            return known;
        }

        if (!_underWay.Add((id, cylinder)))
        {
            throw new DiagnosisException($"The quantity {id} depends on itself.", "Take one of the inputs around the circle out of the knowledge.");
        }

        return made[key] = Intervened(quantity, cylinder);
    }

    /// <summary>The condition of the part now sitting at a place, as a signal over its states.</summary>
    public Signal Aspect(PartInstance seat, string aspect, int position)
    {
        var instance = context.State.At(_model, seat, aspect, position);
        return instance is null ? Signal.Constant(0) : new Signal(conditions.NodeOf(context.State, instance), NodeGraph.Identity(instance.StateNames.Length));
    }

    private Signal Intervened(Quantity quantity, int cylinder)
    {
        var lift = 0;
        foreach (var value in context.SetUp.InForce(cylinder))
        {
            if (value.Sets.TryGetValue(quantity.Id, out var level))
            {
                return Signal.Constant(Level(quantity, level));
            }

            lift += value.Lifts.GetValueOrDefault(quantity.Id);
        }

        var signal = quantity.Combine switch
        {
            Combination.WorstOf or Combination.Any => WorstOf(quantity, cylinder),
            Combination.All => Combined(quantity, cylinder, levels => levels.Min()),
            Combination.Table => Combined(quantity, cylinder, Rows(quantity)),
            Combination.CountFold => CountFold(quantity),
            _ => Combined(quantity, cylinder, SparkMargin.Of(_model, quantity)),
        };
        if (lift == 0)
        {
            return signal;
        }

        var last = quantity.Levels.Count - 1;
        return signal.Through([.. quantity.Levels.Select((_, i) => i == last ? last : Math.Max(0, i - lift))]);
    }

    private Signal WorstOf(Quantity quantity, int cylinder)
    {
        var worst = Signal.Constant(0);
        foreach (var bearing in _model.BearingsOn(quantity.Id, cylinder))
        {
            worst = Worse(quantity, cylinder, worst, Held(quantity, cylinder, bearing));
        }

        foreach (var input in Inputs(quantity, cylinder))
        {
            worst = Worse(quantity, cylinder, worst, input);
        }

        return worst;
    }

    private Signal Worse(Quantity quantity, int cylinder, Signal a, Signal b) =>
        b is { IsConstant: true, Level: 0 } ? a
        : a is { IsConstant: true, Level: 0 } ? b
        : conditions.Graph.Function(Name(quantity, cylinder), quantity.Levels, [a, b], levels => Math.Max(levels[0], levels[1]));

    private Signal Combined(Quantity quantity, int cylinder, Func<int[], int> combine) =>
        conditions.Graph.Function(Name(quantity, cylinder), quantity.Levels, [.. Inputs(quantity, cylinder, mapped: quantity.Combine == Combination.All)], combine);

    /// <summary>Lane by lane; how many lanes are behind the running state is known from the structure, so four states do.</summary>
    private Signal CountFold(Quantity quantity)
    {
        const int All = 0, One = 1, Several = 2, None = 3;
        var input = quantity.Inputs[0].Quantity;
        var fold = Signal.Constant(All);
        for (var cylinder = 1; cylinder <= _model.Layout.Cylinders; cylinder++)
        {
            var before = cylinder - 1;
            fold = conditions.Graph.Function($"{quantity.Id}/{cylinder}", quantity.Levels, [fold, Of(input, cylinder)], levels =>
            {
                var (state, dead) = (before == 0 ? None : levels[0], levels[1] > 0);
                return (state, dead) switch
                {
                    (None, true) => None,
                    (None, false) => before switch { 0 => All, 1 => One, _ => Several },
                    (All, false) => All,
                    (All, true) => One,
                    (One, false) => One,
                    _ => Several,
                };
            });
            conditions.Graph.Gather(cylinder, fold);
        }

        return fold;
    }

    private IEnumerable<Signal> Inputs(Quantity quantity, int cylinder, bool mapped = true)
    {
        foreach (var input in quantity.Inputs)
        {
            var other = _model.Quantity(input.Quantity);
            var applies = input.Only.Holds(_model.Layout);
            if (!applies || IsCut(quantity, cylinder, input.Quantity))
            {
                // A table still needs its column: what is cut, or not there, is at its best.
                if (quantity.Combine is not (Combination.WorstOf or Combination.Any))
                {
                    yield return Signal.Constant(0);
                }

                continue;
            }

            var keepsLevels = quantity.Combine is not (Combination.WorstOf or Combination.Any or Combination.All);
            var signal = Of(input.Quantity, cylinder);
            yield return !mapped || keepsLevels ? signal : signal.Through(Map(quantity, input, other));
        }
    }

    private bool IsCut(Quantity quantity, int cylinder, string input)
    {
        foreach (var value in context.SetUp.InForce(cylinder))
        {
            if (value.Cuts.TryGetValue(quantity.Id, out var inputs) && inputs.Contains(input))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>How far the part at a bearing's seat holds the quantity down.</summary>
    private Signal Held(Quantity quantity, int cylinder, Bearing bearing)
    {
        foreach (var value in context.SetUp.InForce(cylinder, bearing.Seat))
        {
            if (value.Without.Contains(bearing.Seat.Kind.Id))
            {
                return Signal.Constant(0);
            }

            if (value.KnownGood.Contains(bearing.Seat.Kind.Id))
            {
                var node = conditions.KnownGood(bearing.Seat, value.NotGood ?? 0);
                return Signal.Of(node, [0, WorstEffect(quantity, bearing)]);
            }
        }

        var instance = context.State.At(_model, bearing);
        if (instance is null)
        {
            return Signal.Constant(0);
        }

        var version = conditions.NodeOf(context.State, instance);
        var always = new int[instance.StateNames.Length];
        var atTimes = new int[instance.StateNames.Length];
        for (var s = 1; s < always.Length; s++)
        {
            var condition = instance.Conditions[s - 1];
            if (!condition.Effects.TryGetValue(quantity.Id, out var level) || !Triggered(condition, cylinder))
            {
                continue;
            }

            (condition.Shows is null || context.Provoked is not null ? always : atTimes)[s] = Level(quantity, level);
        }

        if (Array.TrueForAll(atTimes, l => l == 0))
        {
            return Signal.Of(version, always);
        }

        var shows = conditions.Shows(version, instance, context.State.Occasion[instance.Part.Index]);
        return conditions.Graph.Function(
            $"{instance.Id}>{quantity.Id}",
            quantity.Levels,
            [new Signal(version, NodeGraph.Identity(always.Length)), new Signal(shows, [0, 1])],
            states => states[1] == 1 ? Math.Max(always[states[0]], atTimes[states[0]]) : always[states[0]]);
    }

    private int WorstEffect(Quantity quantity, Bearing bearing) => _model.AspectsOf[bearing.Seat.Index]
        .Where(a => a.Aspect.Id == bearing.Aspect)
        .SelectMany(a => a.Conditions)
        .Max(c => c.Effects.TryGetValue(quantity.Id, out var level) ? Level(quantity, level) : 0);

    private bool Triggered(Condition condition, int cylinder)
    {
        foreach (var (key, values) in condition.When)
        {
            var met = context.Provoked is { } provoked && values.Values.Any(value => provoked.Contains((key, value)));
            if (!met && !values.Contains(context.SetUp.Value(key, cylinder)))
            {
                return false;
            }
        }

        return true;
    }

    private static int[] Map(Quantity quantity, QuantityInput input, Quantity other) => [.. other.Levels.Select(level =>
        input.Map.TryGetValue(level, out var mapped) ? Level(quantity, mapped)
        : input.Map.Count == 0 && quantity.Levels.Contains(level) ? Level(quantity, level)
        : 0)];

    /// <summary>The first row that matches the inputs' levels gives the level.</summary>
    private Func<int[], int> Rows(Quantity quantity)
    {
        var inputs = quantity.Inputs.Select(i => _model.Quantity(i.Quantity)).ToArray();
        return levels =>
        {
            foreach (var row in quantity.Rows)
            {
                var holds = true;
                for (var i = 0; i < inputs.Length && holds; i++)
                {
                    holds = !row.When.TryGetValue(inputs[i].Id, out var wanted) || wanted.Contains(inputs[i].Levels[levels[i]]);
                }

                if (holds)
                {
                    return Level(quantity, row.Is);
                }
            }

            throw new DiagnosisException($"The table of {quantity.Id} has no row for a combination of its inputs.", "Add a last row without conditions.");
        };
    }

    private static int Level(Quantity quantity, string level)
    {
        for (var i = 0; i < quantity.Levels.Count; i++)
        {
            if (quantity.Levels[i] == level)
            {
                return i;
            }
        }

        throw new DiagnosisException($"The quantity {quantity.Id} has no level {level}.", $"Use one of: {string.Join(", ", quantity.Levels)}.");
    }

    private static string Name(Quantity quantity, int cylinder) =>
        cylinder == 0 ? quantity.Id : string.Create(CultureInfo.InvariantCulture, $"{quantity.Id}@cyl:{cylinder}");
}
