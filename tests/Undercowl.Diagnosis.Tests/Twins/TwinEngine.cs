using Undercowl.Jobs;
using Undercowl.Knowledge;

namespace Undercowl.Diagnosis.Tests.Twins;

/// <summary>
/// The meaning of the knowledge, written a second time and as directly as possible: one world at a time, no graph. It
/// reads a job's entries in order (one device), keeps the state of the engine beside, and multiplies likelihoods.
/// </summary>
internal sealed class TwinEngine(KnowledgeBase knowledge, EngineLayout layout, Choosing world)
{
    private readonly Dictionary<string, string> _occupant = [];
    private readonly Dictionary<string, int> _version = [];
    private readonly Dictionary<string, string> _occasion = [];

    /// <summary>Condition of an aspect as found: 0 is sound.</summary>
    public int AsFound(string part, string place, Aspect aspect)
    {
        var name = $"{part}@{place}.{aspect.Id}";
        var chances = Chances(aspect);
        if (aspect.Given is { } given)
        {
            var quantity = Quantity(given.Quantity);
            var level = new TwinEngine(knowledge, layout, world).Level(quantity.Id, Lane(place), new Dictionary<string, string>());
            if (given.Rows.TryGetValue(quantity.Levels[level], out var row))
            {
                foreach (var (condition, p) in row)
                {
                    chances[1 + aspect.Conditions.ToList().FindIndex(c => c.Id == condition)] = p;
                }

                chances[0] = 1 - chances.Skip(1).Sum();
            }
        }

        return world.Draw(name, chances);
    }

    /// <summary>Condition of an aspect now.</summary>
    public int Now(string part, string place, Aspect aspect) =>
        _version.TryGetValue($"{part}@{place}.{aspect.Id}", out var state) ? state : AsFound(part, place, aspect);

    /// <summary>Condition now of the part sitting at a place, named as <c>kind.aspect</c>.</summary>
    public int Sitting(string aspect, string seat)
    {
        var (part, id) = (aspect.Split('.')[0], aspect.Split('.')[1]);
        return Now(part, _occupant.GetValueOrDefault($"{part}@{seat}", seat), knowledge.Parts.First(p => p.Id == part).Aspects.First(a => a.Id == id));
    }

    public int Level(string id, int lane, IReadOnlyDictionary<string, string> setUp)
    {
        var quantity = Quantity(id);
        lane = quantity.Per == QuantityScope.Engine ? 0 : lane;
        var values = InForce(setUp, lane).ToArray();
        foreach (var value in values)
        {
            if (value.Sets.TryGetValue(id, out var set))
            {
                return Array.IndexOf([.. quantity.Levels], set);
            }
        }

        var level = Combined(quantity, lane, setUp, values);
        var lift = values.Sum(v => v.Lifts.GetValueOrDefault(id));
        return level == quantity.Levels.Count - 1 ? level : Math.Max(0, level - lift);
    }

    public void Apply(Entry entry)
    {
        switch (entry.Body)
        {
            case Swap swap:
                var (a, b) = ($"{swap.Part}@{swap.A}", $"{swap.Part}@{swap.B}");
                (_occupant[a], _occupant[b]) = (_occupant.GetValueOrDefault(b, swap.B.Text), _occupant.GetValueOrDefault(a, swap.A.Text));
                _occasion[$"{swap.Part}@{_occupant[a]}"] = entry.Id.ToString();
                _occasion[$"{swap.Part}@{_occupant[b]}"] = entry.Id.ToString();
                break;
            case Jobs.Remedy done:
                Mend(knowledge.Remedies.First(r => r.Id == done.Action), done.Place.Text, entry.Id.ToString());
                break;
            case Occasion occasion:
                Begin(occasion, entry.Id.ToString());
                break;
            default:
                break;
        }
    }

    private void Mend(Knowledge.Remedy remedy, string seat, string entry)
    {
        var place = _occupant.GetValueOrDefault($"{remedy.Part}@{seat}", seat);
        foreach (var aspect in knowledge.Parts.First(p => p.Id == remedy.Part).Aspects)
        {
            var name = $"{remedy.Part}@{place}.{aspect.Id}";
            if (remedy.Replaces)
            {
                var fresh = Chances(aspect);
                var faults = fresh.Skip(1).Sum();
                fresh = [1 - remedy.NewPartBad!.Value, .. fresh.Skip(1).Select(p => p / faults * remedy.NewPartBad.Value)];
                _version[name] = world.Draw($"{name}~{entry}", fresh);
                continue;
            }

            foreach (var cure in remedy.Cures.Where(c => c.Aspect == aspect.Id))
            {
                var before = Now(remedy.Part, place, aspect);
                var touched = before > 0 && (cure.Conditions.Count == 0 || cure.Conditions.Contains(aspect.Conditions[before - 1].Id));
                _version[name] = touched && world.Draw($"{name}~{entry}", [1 - cure.NotCured, cure.NotCured]) == 0 ? 0 : before;
            }
        }

        _occasion[$"{remedy.Part}@{place}"] = entry;
    }

    private void Begin(Occasion occasion, string entry)
    {
        foreach (var (part, place) in Parts())
        {
            if (occasion.Handled is { } handled && !handled.Any(h => h.Kind == part.Id && (h.Place is null || h.Place.Value.Text == place)))
            {
                continue;
            }

            _occasion[$"{part.Id}@{place}"] = entry;
            foreach (var aspect in part.Aspects.Where(x => x.Passing))
            {
                _version[$"{part.Id}@{place}.{aspect.Id}"] = world.Draw($"{part.Id}@{place}.{aspect.Id}~{entry}", Chances(aspect));
            }
        }
    }

    private int Combined(Quantity quantity, int lane, IReadOnlyDictionary<string, string> setUp, SetUpValue[] values)
    {
        int Of(QuantityInput input) => values.Any(v => v.Cuts.TryGetValue(quantity.Id, out var cut) && cut.Contains(input.Quantity))
            ? 0 : Level(input.Quantity, lane, setUp);
        switch (quantity.Combine)
        {
            case Combination.CountFold:
                var dead = Enumerable.Range(1, layout.Cylinders).Count(c => Level(quantity.Inputs[0].Quantity, c, setUp) > 0);
                return dead == 0 ? 0 : dead == layout.Cylinders ? 3 : dead == 1 ? 1 : 2;
            case Combination.Table:
                var levels = quantity.Inputs.ToDictionary(i => i.Quantity, i => Quantity(i.Quantity).Levels[Of(i)]);
                return Array.IndexOf([.. quantity.Levels], quantity.Rows.First(r => r.When.All(w => w.Value.Contains(levels[w.Key]))).Is);
            default:
                var worst = 0;
                foreach (var (part, place) in Parts())
                {
                    if (lane == 0 || Serves(place, lane))
                    {
                        worst = Math.Max(worst, Effect(part, place, quantity, lane, setUp, values));
                    }
                }

                foreach (var input in quantity.Inputs)
                {
                    var name = Quantity(input.Quantity).Levels[Of(input)];
                    var mapped = input.Map.GetValueOrDefault(name) ?? (input.Map.Count == 0 ? name : quantity.Levels[0]);
                    worst = Math.Max(worst, Array.IndexOf([.. quantity.Levels], mapped));
                }

                return worst;
        }
    }

    private int Effect(PartKind part, string seat, Quantity quantity, int lane, IReadOnlyDictionary<string, string> setUp, SetUpValue[] values)
    {
        if (!part.Aspects.Any(a => a.Conditions.Any(c => c.Effects.ContainsKey(quantity.Id))) || values.Any(v => v.Without.Contains(part.Id)))
        {
            return 0;
        }

        int Index(string level) => Array.IndexOf([.. quantity.Levels], level);
        if (values.FirstOrDefault(v => v.KnownGood.Contains(part.Id)) is { } good)
        {
            var bad = world.Draw($"known-good {part.Id}@{seat}", [1 - good.NotGood!.Value, good.NotGood.Value]) == 1;
            return bad ? part.Aspects.SelectMany(a => a.Conditions).Max(c => c.Effects.TryGetValue(quantity.Id, out var l) ? Index(l) : 0) : 0;
        }

        var place = _occupant.GetValueOrDefault($"{part.Id}@{seat}", seat);
        var worst = 0;
        foreach (var aspect in part.Aspects.Where(a => a.Conditions.Any(c => c.Effects.ContainsKey(quantity.Id))))
        {
            var state = Now(part.Id, place, aspect);
            if (state == 0 || !aspect.Conditions[state - 1].Effects.TryGetValue(quantity.Id, out var level))
            {
                continue;
            }

            var condition = aspect.Conditions[state - 1];
            var triggered = condition.When.All(w => w.Value.Contains(ValueOf(w.Key, lane, setUp)));
            var occasion = _occasion.GetValueOrDefault($"{part.Id}@{place}", "opening");
            var version = _version.ContainsKey($"{part.Id}@{place}.{aspect.Id}") ? "later" : "first";
            var shows = condition.Shows is not { } p || world.Draw($"shows {part.Id}@{place}.{aspect.Id} {version} {occasion}", [1 - p, p]) == 1;
            worst = triggered && shows ? Math.Max(worst, Index(level)) : worst;
        }

        return worst;
    }

    private string ValueOf(string key, int lane, IReadOnlyDictionary<string, string> setUp) =>
        setUp.GetValueOrDefault($"{key}@cyl:{lane}") ?? setUp.GetValueOrDefault(key) ?? knowledge.SetUps.First(s => s.Id == key).Default;

    private IEnumerable<SetUpValue> InForce(IReadOnlyDictionary<string, string> setUp, int lane) =>
        knowledge.SetUps.Where(k => k.Per == QuantityScope.Engine || lane > 0).Select(k => k.Values.First(v => v.Id == ValueOf(k.Id, lane, setUp)));

    private IEnumerable<(PartKind Part, string Place)> Parts() => layout.Parts.SelectMany(p => p.At.Values.SelectMany(at =>
        at == "each cyl" ? Enumerable.Range(1, layout.Cylinders).Select(c => $"cyl:{c}") : [at]).Select(place => (knowledge.Parts.First(k => k.Id == p.Part), place)));

    private static bool Serves(string place, int lane) => Lane(place) is 0 || Lane(place) == lane;

    private static int Lane(string place) => place.StartsWith("cyl:", StringComparison.Ordinal) ? place[^1] - '0' : 0;

    private static double[] Chances(Aspect aspect) => [1 - aspect.Conditions.Sum(c => c.Prior), .. aspect.Conditions.Select(c => c.Prior)];

    private Quantity Quantity(string id) => knowledge.Quantities.First(q => q.Id == id);
}
