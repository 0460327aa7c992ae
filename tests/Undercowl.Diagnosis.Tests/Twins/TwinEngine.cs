using Undercowl.Jobs;
using Undercowl.Knowledge;
using Undercowl.Physics;

namespace Undercowl.Diagnosis.Tests.Twins;

/// <summary>
/// The meaning of the knowledge, written a second time and as directly as possible: one world at a time, no graph. Deeds
/// lead from one state of the engine to the next (one device, in order); a level is asked for in a state and a set-up.
/// </summary>
internal sealed class TwinEngine
{
    private readonly KnowledgeBase _knowledge;
    private readonly EngineLayout _layout;
    private readonly Recalled _world;
    private readonly (string Kind, string Place, int[] Lanes)[] _parts;
    private readonly ILookup<string, TwinAspect> _aspectsOf;
    private readonly Dictionary<string, Quantity> _quantities;
    private readonly Dictionary<(TwinState, string SetUp), Copy> _copies = [];

    private readonly TwinInterview _interview;

    public TwinEngine(KnowledgeBase knowledge, EngineLayout layout, IWorld world, TwinInterview interview)
    {
        _interview = interview;
        (_knowledge, _layout, _world) = (knowledge, layout, new Recalled(world));
        _quantities = knowledge.Quantities.ToDictionary(q => q.Id);
        _parts = [.. LayoutPlaces.Of(layout).Select(p => (p.Kind, p.Place, p.Cylinders.ToArray()))];
        Aspects = [.. _parts.SelectMany(p => AspectsOf(p.Kind, p.Place, p.Lanes))];
        _aspectsOf = Aspects.ToLookup(a => a.Part);
    }

    public TwinAspect[] Aspects { get; }

    /// <summary>Condition of an aspect as found: 0 is sound.</summary>
    public int AsFound(TwinAspect aspect)
    {
        var chances = aspect.Chances;
        if (aspect.Aspect.Given is { } given)
        {
            var quantity = _quantities[given.Quantity];
            var level = quantity.Levels[Level(In(TwinState.AsItCameIn, given.SetUp), quantity.Id, aspect.Lane)];
            if (given.Rows.TryGetValue(level, out var row))
            {
                double[] faults = [.. aspect.Conditions.Select(c => row.GetValueOrDefault(c.Id, c.Prior))];
                chances = [1 - faults.Sum(), .. faults];
            }
        }

        return _world.Draw(aspect.Name, Befallen(aspect, chances));
    }

    /// <summary>The chances of a condition, given on average, where the common causes that tie did or did not befall the engine.</summary>
    private double[] Befallen(TwinAspect aspect, double[] average)
    {
        var chances = (double[])average.Clone();
        foreach (var cause in _interview.Tied)
        {
            double[] times = [1, .. aspect.Conditions.Select(c => cause.Likelier.FirstOrDefault(l => l.Aspect == aspect.Kind && l.Conditions.Values.Contains(c.Id))?.Times ?? 1)];
            if (chances.Zip(times).Any(c => c.First > 0 && c.Second != 1))
            {
                var befell = TwinInterview.Befell(_world, cause);
                chances = [0, .. chances.Zip(times, (p, t) => p / (1 - cause.Prior + cause.Prior * t) * (befell ? t : 1)).Skip(1)];
            }
        }

        chances[0] = 1 - chances.Skip(1).Sum();
        return chances;
    }

    /// <summary>Condition of an aspect in a state of the engine.</summary>
    public int Condition(TwinState state, TwinAspect aspect) =>
        state.Version.TryGetValue(aspect.Name, out var version) ? version.Condition() : AsFound(aspect);

    /// <summary>
    /// Condition of the part sitting at a place, for a check that reads <c>kind.aspect</c> there; the seat that serves the place
    /// when none has its name. Null when there is none.
    /// </summary>
    public TwinAspect? Sitting(TwinState state, string aspect, string place)
    {
        var (kind, id) = (aspect[..aspect.LastIndexOf('.')], aspect[(aspect.LastIndexOf('.') + 1)..]);
        LayoutPlaces.TryCylinders(_layout, place, out var lanes);
        var seats = _parts.Where(p => p.Kind == kind).ToArray();
        var seat = Array.Find(seats, p => p.Place == place);
        seat = seat.Kind is null ? Array.Find(seats, p => lanes.All(p.Lanes.Contains)) : seat;
        if (seat.Kind is null)
        {
            return null;
        }

        var part = state.At($"{seat.Kind}@{seat.Place}");
        return _aspectsOf[part].FirstOrDefault(a => a.Aspect.Id == id && (a.Output == 0 || a.Output == OutputAt(state, part, seat.Lanes, lanes[0])));
    }

    /// <summary>A state of the engine in a set-up, given as <c>key</c> or <c>key@cyl:n</c> to value.</summary>
    public Copy In(TwinState state, IReadOnlyDictionary<string, string> setUp)
    {
        var text = string.Join(';', setUp.OrderBy(p => p.Key, StringComparer.Ordinal));
        return _copies.TryGetValue((state, text), out var copy) ? copy : _copies[(state, text)] = new Copy(this, $"copy {_copies.Count}", state, setUp);
    }

    /// <summary>Level of a quantity in a cylinder, or in the engine as a whole.</summary>
    public int Level(Copy copy, string id, int lane)
    {
        var quantity = _quantities[id];
        lane = quantity.Per == QuantityScope.Engine ? 0 : lane;
        return _world.Of(copy.Memory(id, lane), () => Intervened(copy, quantity, lane));
    }

    /// <summary>The engine after an entry; the same when the entry is no deed.</summary>
    /// <param name="state">Before it.</param>
    /// <param name="entry">The entry.</param>
    /// <param name="came">What came of it, when it is a remedy and that is known.</param>
    public TwinState After(TwinState state, Entry entry, RemedyResult? came = null)
    {
        var after = state.Copy();
        switch (entry.Body)
        {
            case Swap swap:
                Exchange(after, swap, entry.Id.ToString());
                return after;
            case Jobs.Remedy done:
                Mend(state, after, _knowledge.Remedies.First(r => r.Id == done.Action), done, entry.Id.ToString());
                return came == RemedyResult.NewFault ? Damaged(after, entry.Id.ToString()) : after;
            case Occasion occasion:
                Begin(after, occasion, entry.Id.ToString());
                return after;
            default:
                return state;
        }
    }

    /// <summary>The engine some time later: all that passes is drawn afresh.</summary>
    public TwinState Later(TwinState state, string name)
    {
        var later = state.Copy();
        Begin(later, new Occasion(Heat.Cold, name), name);
        return later;
    }

    /// <summary>The engine at another moment: what comes and goes may show or not, what passes stands.</summary>
    public TwinState AnotherMoment(string name)
    {
        var state = TwinState.AsItCameIn.Copy();
        foreach (var (kind, place, _) in _parts)
        {
            state.Occasion[$"{kind}@{place}"] = name;
        }

        return state;
    }

    /// <summary>What is sound may have gone wrong meanwhile, in any way that it may be wrong in an engine that comes in.</summary>
    private TwinState Damaged(TwinState before, string entry)
    {
        var after = before.Copy();
        foreach (var aspect in Aspects.Where(a => !a.Aspect.Passing && !a.Aspect.Consequence))
        {
            var name = $"{aspect.Name} since {entry}";
            after.Version[aspect.Name] = (name, () => Condition(before, aspect) is > 0 and var was ? was : _world.Draw(name, aspect.Chances));
        }

        return after;
    }

    private IEnumerable<TwinAspect> AspectsOf(string kind, string place, int[] lanes)
    {
        foreach (var aspect in _knowledge.Parts.First(p => p.Id == kind).Aspects.Where(a => a.Only.Holds(_layout)))
        {
            Condition[] conditions = [.. aspect.Conditions.Where(c => c.Only.Holds(_layout))];
            foreach (var output in conditions.Length == 0 ? [] : aspect.PerCylinder ? lanes : [0])
            {
                var part = $"{kind}@{place}";
                yield return new TwinAspect(
                    $"{part}{(output == 0 ? "" : $"/{output}")}.{aspect.Id}", part, output, output == 0 ? lanes[0] : output, aspect, conditions);
            }
        }
    }

    /// <summary>The output of a part, sitting at a seat, that serves a lane of that seat.</summary>
    private int OutputAt(TwinState state, string part, int[] lanesOfSeat, int lane)
    {
        var own = _parts.First(p => $"{p.Kind}@{p.Place}" == part).Lanes;
        var output = own[Array.IndexOf(lanesOfSeat, lane)];
        return state.Output.GetValueOrDefault((part, output), output);
    }

    private void Exchange(TwinState state, Swap swap, string entry)
    {
        var (a, b) = ($"{swap.Part}@{swap.A}", $"{swap.Part}@{swap.B}");
        if (Array.Exists(_parts, p => $"{p.Kind}@{p.Place}" == a) && Array.Exists(_parts, p => $"{p.Kind}@{p.Place}" == b))
        {
            (state.Occupant[a], state.Occupant[b]) = (state.At(b), state.At(a));
            (state.Occasion[state.At(a)], state.Occasion[state.At(b)]) = (entry, entry);
            return;
        }

        // Two outputs of one part.
        var (from, to) = (swap.A.Cylinders[0], swap.B.Cylinders[0]);
        var shared = _parts.First(p => p.Kind == swap.Part && p.Lanes.Contains(from) && p.Lanes.Contains(to));
        var part = $"{shared.Kind}@{shared.Place}";
        (state.Output[(part, from)], state.Output[(part, to)]) =
            (state.Output.GetValueOrDefault((part, to), to), state.Output.GetValueOrDefault((part, from), from));
        state.Occasion[part] = entry;
    }

    private void Mend(TwinState before, TwinState after, Knowledge.Remedy remedy, Jobs.Remedy done, string entry)
    {
        var seat = _parts.First(p => p.Kind == remedy.Part && p.Place == done.Place.Text);
        Mend(before, after, remedy, done, entry, remedy.Part, before.At($"{remedy.Part}@{done.Place}"));
        foreach (var besides in _parts.Where(p => p.Kind != remedy.Part && remedy.Cures.Any(c => c.Part == p.Kind) && p.Lanes.Intersect(seat.Lanes).Any()))
        {
            Mend(before, after, remedy, done, entry, besides.Kind, before.At($"{besides.Kind}@{besides.Place}"));
        }
    }

    private void Mend(TwinState before, TwinState after, Knowledge.Remedy remedy, Jobs.Remedy done, string entry, string kind, string part)
    {
        foreach (var aspect in _aspectsOf[part].Where(a => done.Output is null || a.Output.ToString() == done.Output))
        {
            var name = $"{aspect.Name}~{entry}";
            var cure = remedy.Cures.FirstOrDefault(c => (c.Part ?? remedy.Part) == kind && c.Aspect == aspect.Aspect.Id);
            if (remedy.Replaces)
            {
                var faults = aspect.Chances.Skip(1).Sum();
                double[] fresh = faults == 0 ? aspect.Chances
                    : [1 - remedy.NewPartBad!.Value, .. aspect.Chances.Skip(1).Select(p => p / faults * remedy.NewPartBad.Value)];
                after.Version[aspect.Name] = (name, () => _world.Draw(name, fresh));
            }
            else if (cure is not null)
            {
                double[] cured = [1 - cure.NotCured, cure.NotCured];
                int Mended()
                {
                    var was = Condition(before, aspect);
                    var meant = was > 0 && (cure.Conditions.Count == 0 || cure.Conditions.Contains(aspect.Conditions[was - 1].Id));
                    return meant && _world.Draw(name, cured) == 0 ? 0 : was;
                }

                after.Version[aspect.Name] = (name, Mended);
            }
        }

        after.Occasion[part] = entry;
    }

    private void Begin(TwinState state, Occasion occasion, string entry)
    {
        foreach (var (kind, place, _) in _parts)
        {
            if (occasion.Handled is { } handled && !handled.Any(h => h.Kind == kind && (h.Place is null || h.Place.Value.Text == place)))
            {
                continue;
            }

            state.Occasion[$"{kind}@{place}"] = entry;
            foreach (var aspect in _aspectsOf[$"{kind}@{place}"].Where(a => a.Aspect.Passing))
            {
                var name = $"{aspect.Name}~{entry}";
                state.Version[aspect.Name] = (name, () => _world.Draw(name, aspect.Chances));
            }
        }
    }

    private int Intervened(Copy copy, Quantity quantity, int lane)
    {
        var values = copy.InForce(lane);
        foreach (var value in values)
        {
            if (value.Sets.TryGetValue(quantity.Id, out var set))
            {
                return Index(quantity, set);
            }
        }

        var level = Combined(copy, quantity, lane, values);
        var lift = values.Sum(v => v.Lifts.GetValueOrDefault(quantity.Id));
        return level == quantity.Levels.Count - 1 ? level : Math.Max(0, level - lift);
    }

    private int Combined(Copy copy, Quantity quantity, int lane, SetUpValue[] values)
    {
        // An input that is cut, or that this engine has not, is at its best.
        bool IsCut(QuantityInput input) => values.Any(v => v.Cuts.TryGetValue(quantity.Id, out var cut) && cut.Contains(input.Quantity));
        int Of(QuantityInput input) => !input.Only.Holds(_layout) || IsCut(input) ? 0 : Level(copy, input.Quantity, lane);
        switch (quantity.Combine)
        {
            case Combination.CountFold:
                var dead = Enumerable.Range(1, _layout.Cylinders).Count(c => Level(copy, quantity.Inputs[0].Quantity, c) > 0);
                return dead == 0 ? 0 : dead == _layout.Cylinders ? 3 : dead == 1 ? 1 : 2;
            case Combination.Table:
                var row = quantity.Rows.First(r => quantity.Inputs.All(i =>
                    !r.When.TryGetValue(i.Quantity, out var wanted) || wanted.Contains(_quantities[i.Quantity].Levels[Of(i)])));
                return Index(quantity, row.Is);
            case Combination.SparkInCylinder:
            case Combination.SparkInAir:
                return Spark(quantity, [.. quantity.Inputs.Select(i => Number(i.Quantity, Of(i)))]);
            case Combination.WorstOf:
            case Combination.Any:
                var worst = 0;
                foreach (var (kind, place, lanes) in _parts)
                {
                    if (worst < quantity.Levels.Count - 1 && (lane == 0 || lanes.Contains(lane)))
                    {
                        worst = Math.Max(worst, Held(copy, kind, place, lanes, quantity, lane, values));
                    }
                }

                foreach (var input in quantity.Inputs.Where(i => i.Only.Holds(_layout)))
                {
                    if (worst < quantity.Levels.Count - 1)
                    {
                        var name = _quantities[input.Quantity].Levels[Of(input)];
                        var mapped = input.Map.GetValueOrDefault(name) ?? (input.Map.Count == 0 ? name : quantity.Levels[0]);
                        worst = Math.Max(worst, Index(quantity, mapped));
                    }
                }

                return worst;
            default:
                throw new NotSupportedException($"{quantity.Combine} is written once only.");
        }
    }

    /// <summary>Available over required voltage, between its two thresholds; inputs: kV, megohms of the shunt, mm of the gap.</summary>
    private int Spark(Quantity quantity, double?[] inputs)
    {
        double Parameter(string name) => quantity.Parameters.First(p => p.Name == name && p.Only.Holds(_layout)).Value;
        if (inputs is not [> 0 and var kilovolts, var megohms, > 0 and var millimetres])
        {
            return 2;
        }

        var kept = 1.0;
        if (megohms is { } shunt)
        {
            // sqrt(L/C) in ohms over 2R in ohms.
            var z = Math.Sqrt(Parameter("secondary-henry") / (Parameter("secondary-picofarad") * 1e-12)) / (2 * shunt * 1e6);
            kept = Parameter("step-driven") > 0
                ? (1 + (z < 1 ? Math.Exp(-Math.PI * z / Math.Sqrt(1 - z * z)) : 0)) / 2
                : Math.Exp(-z * (z < 1 ? Math.Acos(z) / Math.Sqrt(1 - z * z) : Math.Acosh(z) / Math.Sqrt(z * z - 1)));
        }

        var required = UniformFieldGap.BreakdownPeakKilovolts(millimetres);
        if (quantity.Combine == Combination.SparkInCylinder)
        {
            var (bar, kelvin) = (Parameter("pressure-bar"), Parameter("gas-kelvin"));
            required = 4.3 + 136 * bar / kelvin + 324 * bar * millimetres / kelvin;
        }

        var ratio = kilovolts * kept / required;
        return ratio >= Parameter("good-at") ? 0 : ratio >= Parameter("weak-at") ? 1 : 2;
    }

    private double? Number(string quantity, int level) =>
        _quantities[quantity].Numbers.FirstOrDefault(n => n.Level == _quantities[quantity].Levels[level] && n.Only.Holds(_layout))?.Value;

    /// <summary>How far down the part at a seat holds a quantity.</summary>
    private int Held(Copy copy, string kind, string place, int[] lanes, Quantity quantity, int lane, SetUpValue[] values)
    {
        var seat = $"{kind}@{place}";
        if (values.Any(v => v.Without.Contains(kind)) || !_aspectsOf[seat].Any(a => Bears(a, quantity)))
        {
            return 0;
        }

        if (values.FirstOrDefault(v => v.KnownGood.Contains(kind)) is { } good)
        {
            var bad = _world.Draw($"known-good {seat}", [1 - good.NotGood!.Value, good.NotGood.Value]) == 1;
            return bad ? _aspectsOf[seat].SelectMany(a => a.Conditions).Max(c => c.Effects.TryGetValue(quantity.Id, out var l) ? Index(quantity, l) : 0) : 0;
        }

        var part = copy.State.At(seat);
        var worst = 0;
        foreach (var aspect in _aspectsOf[part].Where(a => Bears(a, quantity)))
        {
            if (aspect.Output == 0 || lane == 0 || aspect.Output == OutputAt(copy.State, part, lanes, lane))
            {
                worst = Math.Max(worst, Effect(copy, aspect, quantity, lane));
            }
        }

        return worst;
    }

    private int Effect(Copy copy, TwinAspect aspect, Quantity quantity, int lane)
    {
        var state = Condition(copy.State, aspect);
        if (state == 0 || !aspect.Conditions[state - 1].Effects.TryGetValue(quantity.Id, out var level))
        {
            return 0;
        }

        var condition = aspect.Conditions[state - 1];
        if (!condition.When.All(w => w.Value.Contains(copy.Value(w.Key, lane))))
        {
            return 0;
        }

        // It shows or not for the whole of an occasion, and afresh after a deed on the part.
        var version = copy.State.Version.TryGetValue(aspect.Name, out var later) ? later.Name : aspect.Name;
        var occasion = copy.State.Occasion.GetValueOrDefault(aspect.Part, "opening");
        return condition.Shows is not { } p || _world.Draw($"shows {version} in {occasion}", [1 - p, p]) == 1 ? Index(quantity, level) : 0;
    }

    private static bool Bears(TwinAspect aspect, Quantity quantity) => Array.Exists(aspect.Conditions, c => c.Effects.ContainsKey(quantity.Id));

    private static int Index(Quantity quantity, string level) => Array.IndexOf([.. quantity.Levels], level);

    /// <summary>The quantities of one state of the engine in one set-up.</summary>
    internal sealed class Copy(TwinEngine engine, string name, TwinState state, IReadOnlyDictionary<string, string> setUp)
    {
        private readonly Dictionary<(string Quantity, int Lane), Recalled.Memory> _memories = [];
        private readonly Dictionary<int, SetUpValue[]> _inForce = [];

        /// <summary>Another for every state and set-up.</summary>
        public string Name => name;

        public TwinState State => state;

        public Recalled.Memory Memory(string quantity, int lane) =>
            _memories.TryGetValue((quantity, lane), out var known) ? known : _memories[(quantity, lane)] = new Recalled.Memory();

        public string Value(string key, int lane) =>
            setUp.GetValueOrDefault($"{key}@cyl:{lane}") ?? setUp.GetValueOrDefault(key) ?? engine._knowledge.SetUps.First(s => s.Id == key).Default;

        /// <summary>The values that hold in a lane; a key of single cylinders says nothing of the engine as a whole.</summary>
        public SetUpValue[] InForce(int lane) => _inForce.TryGetValue(lane, out var known) ? known : _inForce[lane] =
        [
            .. engine._knowledge.SetUps
                .Where(k => k.Per == QuantityScope.Engine || lane > 0)
                .Select(k => k.Values.First(v => v.Id == Value(k.Id, lane))),
        ];
    }
}
