using System.Globalization;
using Undercowl.Jobs;
using Undercowl.Knowledge;

namespace Undercowl.Diagnosis.Tests.Fixtures;

/// <summary>What might be written down about an engine of one layout with the knowledge of the repository. From a seed.</summary>
internal sealed class ShopJobs
{
    /// <summary>About as many worlds as a job may have.</summary>
    private const double MostWorlds = 25_000;

    private readonly KnowledgeBase _knowledge;
    private readonly EngineLayout _layout;
    private readonly IReadOnlyList<PartPlace> _parts;
    private readonly (Check Check, string[] Places)[] _checks;
    private readonly (Knowledge.Remedy Remedy, string Place)[] _remedies;
    private readonly Swap[] _swaps;
    private readonly Knowledge.Complaint[] _complaints;
    private readonly ILookup<string, (Check Check, string[] Places)> _telling;

    public ShopJobs(KnowledgeBase knowledge, string layout)
    {
        _knowledge = knowledge;
        _layout = knowledge.Layouts.First(l => l.Id == layout);
        _parts = LayoutPlaces.Of(_layout);
        string[] cylinders = [.. Enumerable.Range(1, _layout.Cylinders).Select(c => $"cyl:{c}")];
        _checks = [.. knowledge.Checks
            .Where(c => c.Only.Holds(_layout))
            .Where(c => c.Likelihood.Aspect?.Split('.') is not [var part, var aspect] || Aspects(part).Any(a => a.Id == aspect))
            .Select(c => (c, c.At switch { "engine" => ["engine"], "cyl" => cylinders, _ => Places(c.At) }))
            .Where(c => c.Item2.Length > 0)];
        _remedies = [.. knowledge.Remedies.Where(r => r.Only.Holds(_layout)).SelectMany(r => Places(r.Part), (r, place) => (r, place))];
        _swaps = [.. knowledge.Parts.Where(k => k.Swappable).SelectMany(Exchanges)];
        _complaints = [.. knowledge.Complaints.Where(c => c.Only.Holds(_layout))];
        _telling = _parts.Select(p => p.Kind).Distinct()
            .SelectMany(part => _checks.Where(c => Tells(c.Check, part)), (part, check) => (part, check)).ToLookup(p => p.part, p => p.check);
    }

    /// <summary>
    /// Five to eight deeds and findings in their order, one device. About half are about one part; some readings are taken again.
    /// Where that part has outputs, one of them is mended besides.
    /// </summary>
    public List<EntryBody> Mixed(Random random)
    {
        var bodies = new List<EntryBody>();
        var heat = "cold";
        string[] handled = [.. _swaps.Select(s => s.Part), .. _remedies.Select(r => r.Remedy.Part)];
        string[] withOutputs = [.. _remedies.Where(r => Outputs(r.Remedy.Part, r.Place).Any()).Select(r => r.Remedy.Part).Distinct()];
        var about = withOutputs.Length > 0 && random.Next(3) == 0 ? withOutputs[random.Next(withOutputs.Length)] : handled[random.Next(handled.Length)];
        for (var i = 5 + random.Next(4); i > 0; i--)
        {
            var part = random.Next(2) == 0 ? about : null;
            bodies.Add(
                random.Next(10) < 3 ? Deed(random, ref heat, part)
                : random.Next(3) == 0 && bodies.OfType<Finding>().LastOrDefault() is { } before ? Again(random, before, heat)
                : Found(random, heat, part));
        }

        // From a sequence of its own, so that the rest of a seed's job is what it was.
        var asked = new Random(bodies.Count + 31 * bodies.OfType<Finding>().Sum(f => f.Check.Length));
        for (var i = _layout.Cylinders < 3 && asked.Next(3) > 0 ? 1 + asked.Next(2) : 0; i > 0; i--)
        {
            bodies.Insert(asked.Next(bodies.Count), RandomJobs.Answer(asked, _knowledge));
        }

        if (withOutputs.Contains(about))
        {
            (Knowledge.Remedy Remedy, string Place)[] remedies = [.. _remedies.Where(r => r.Remedy.Part == about)];
            var (remedy, place) = remedies[random.Next(remedies.Length)];
            bodies.Insert(random.Next(bodies.Count), OfOneOutput(random, remedy, place));
        }

        return bodies;
    }

    /// <summary>A swap, a remedy or a new occasion.</summary>
    /// <param name="random">Draws.</param>
    /// <param name="heat">The heat, which an occasion may change.</param>
    /// <param name="part">The part kind to be swapped or mended, or null for any.</param>
    public EntryBody Deed(Random random, ref string heat, string? part = null)
    {
        Swap[] swaps = [.. _swaps.Where(s => part is null || s.Part == part)];
        (Knowledge.Remedy Remedy, string Place)[] remedies = [.. _remedies.Where(r => part is null || r.Remedy.Part == part)];
        switch (random.Next(3))
        {
            case 0 when swaps.Length > 0:
                return swaps[random.Next(swaps.Length)];
            case < 2 when remedies.Length > 0:
                var (remedy, place) = remedies[random.Next(remedies.Length)];
                return Outputs(remedy.Part, place).Any() && random.Next(2) == 0 ? OfOneOutput(random, remedy, place) : new Jobs.Remedy(remedy.Id, remedy.Revision, Place.Parse(place)) { Result = Came(random) };
            default:
                heat = random.Next(2) == 0 ? "hot" : "cold";
                var handled = _parts[random.Next(_parts.Count)];
                return new Occasion(Enum.Parse<Heat>(heat, true), "time passed", random.Next(3) == 0 ? [PartId.Parse(handled.Id)] : null);
        }
    }

    /// <summary>A finding of any check, or of one that tells of a part kind.</summary>
    public Finding Found(Random random, string heat, string? part = null)
    {
        (Check Check, string[] Places)[] checks = part is null || !_telling.Contains(part) ? _checks : [.. _telling[part]];
        var (check, places) = checks[random.Next(checks.Length)];
        var place = places[random.Next(places.Length)];
        var setUp = new Dictionary<string, string> { ["heat"] = heat };
        foreach (var (key, value) in check.SetUp)
        {
            setUp[key.Replace("@here", "@" + place, StringComparison.Ordinal)] = value;
        }

        foreach (var key in _knowledge.SetUps.Where(k => !k.EndsOccasion && random.Next(12) == 0))
        {
            var value = key.Values[random.Next(key.Values.Count)].Id;
            setUp[key.Per == QuantityScope.Engine ? key.Id : $"{key.Id}@cyl:{1 + random.Next(_layout.Cylinders)}"] = value;
        }

        foreach (var setting in check.Settings)
        {
            setUp[setting.Id] = $"{4 + random.Next(9)} {setting.Unit}";
        }

        var hand = _knowledge.Hands[random.Next(_knowledge.Hands.Count)].Id;
        return new Finding(check.Id, check.Revision, Place.Parse(place), setUp, "as written", hand, Reading(random, check))
        {
            Tool = check.Tools.FirstOrDefault(t => _knowledge.Tools.Any(k => k.Id == t && (k.Shape is not null || k.Aspects.Count > 0))),
            Hearsay = random.Next(12) == 0,
        };
    }

    /// <summary>The layout's job with these entries, one after the other.</summary>
    /// <param name="workbench">Gives the opening.</param>
    /// <param name="bodies">The entries.</param>
    /// <param name="seed">Of the ids, and of which complaint it is.</param>
    /// <param name="takingBack">When given: some entries are taken back as the job goes on, and a few withdrawals too.</param>
    public Job Written(Workbench workbench, IEnumerable<EntryBody> bodies, int seed, Random? takingBack = null)
    {
        var writer = Story.Writer("dock", seed);
        var job = Job.Empty.With(writer.Next(Job.Empty, workbench.Opening(_layout.Id, _complaints[seed % _complaints.Length].Id)));
        foreach (var body in bodies)
        {
            job = job.With(writer.Next(job, body));
            while (takingBack?.Next(4) == 0)
            {
                job = job.With(writer.Next(job, new Withdrawn(job.Entries[1 + takingBack.Next(job.Count - 1)].Id, "a slip")));
            }
        }

        return job;
    }

    /// <summary>
    /// The same knowledge, where only some aspects can be out of order: those that the entries read or change and others that
    /// bear on what is read, as many as leave few enough worlds.
    /// </summary>
    public KnowledgeBase Narrowed(IReadOnlyCollection<EntryBody> bodies, Random random)
    {
        var read = bodies.OfType<Finding>().Select(f => _knowledge.Checks.First(c => c.Id == f.Check).Likelihood).ToArray();
        HashSet<string> changed = [
            .. bodies.OfType<Swap>().Select(s => s.Part),
            .. bodies.OfType<Jobs.Remedy>().Select(r => _knowledge.Remedies.First(k => k.Id == r.Action).Part)];
        var quantities = Behind(read.Select(l => l.Quantity).OfType<string>());
        (string Part, Aspect Aspect)[] all = [.. _parts.Select(p => p.Kind).Distinct().SelectMany(Aspects, (part, aspect) => (part, aspect))];
        random.Shuffle(all);
        var comesAndGoes = random.Next(2) == 0;
        var kept = new HashSet<(string, string)>();
        // What may have befallen the engine doubles them again.
        var worlds = (bodies.OfType<Intake>().Any() ? 4 : 1) * read.Select(l => l.Model == LikelihoodModel.Table ? 1.0 : 2).DefaultIfEmpty(1).Max();
        foreach (var (part, aspect) in all.OrderBy(a =>
            comesAndGoes && a.Aspect.Conditions.Any(c => c.Shows is not null) ? 0
            : changed.Contains(a.Part) || read.Any(l => l.Aspect == $"{a.Part}.{a.Aspect.Id}") ? 1
            : a.Aspect.Conditions.Any(c => c.Effects.Keys.Any(quantities.Contains)) ? 2 : 3))
        {
            var with = worlds;
            foreach (var place in _parts.Where(p => p.Kind == part))
            {
                var states = Math.Pow(1 + aspect.Conditions.Count, aspect.PerCylinder ? place.Cylinders.Count : 1);
                with *= states * (aspect.Conditions.Any(c => c.Shows is not null) ? 2 : 1);
                foreach (var done in bodies.OfType<Jobs.Remedy>().Where(r => r.Place.Text == place.Place))
                {
                    var remedy = _knowledge.Remedies.First(k => k.Id == done.Action);
                    with *= remedy.Part != part ? 1 : remedy.Replaces ? states : 1.6;
                }
            }

            if (with <= MostWorlds)
            {
                kept.Add((part, aspect.Id));
                worlds = with;
            }
        }

        return _knowledge with
        {
            CommonCauses = [.. Few(bodies, random, worlds / 4)],
            Parts = [.. _knowledge.Parts.Select(p => p with
            {
                Aspects = [.. p.Aspects.Select(a => kept.Contains((p.Id, a.Id)) ? a : a with
                {
                    Given = null,
                    Conditions = [.. a.Conditions.Select(c => c with { Prior = 0 })],
                })],
            })],
        };
    }

    /// <summary>Common causes, where something is said in the interview: of those that may tie, as many as leave few enough worlds.</summary>
    private IEnumerable<CommonCause> Few(IReadOnlyCollection<EntryBody> bodies, Random random, double worlds)
    {
        var causes = _knowledge.CommonCauses.ToArray();
        random.Shuffle(causes);
        foreach (var cause in causes.Where(c => bodies.OfType<Intake>().Any() && c.Only.Holds(_layout)))
        {
            if (!cause.Together || worlds * 2 <= MostWorlds)
            {
                worlds *= cause.Together ? 2 : 1;
                yield return cause;
            }
        }
    }

    /// <summary>The same check once more, mostly at the same place; the engine may have been changed since.</summary>
    private Finding Again(Random random, Finding before, string heat)
    {
        var (check, places) = _checks.First(c => c.Check.Id == before.Check);
        var reading = random.Next(2) == 0 ? before.Value : Reading(random, check);
        var place = random.Next(4) == 0 ? Place.Parse(places[random.Next(places.Length)]) : before.Place;
        return before with { Place = place, SetUp = new Dictionary<string, string>(before.SetUp) { ["heat"] = heat }, Value = reading };
    }

    private bool Tells(Check check, string part) => check.Likelihood.Quantity is { } quantity
        ? Behind([quantity]) is var behind && Aspects(part).SelectMany(a => a.Conditions).Any(c => c.Effects.Keys.Any(behind.Contains))
        : check.Likelihood.Aspect?.Split('.')[0] == part;

    /// <summary>Quantities and all that they follow from.</summary>
    private HashSet<string> Behind(IEnumerable<string> quantities)
    {
        var found = new HashSet<string>();
        var open = new Stack<string>(quantities);
        while (open.TryPop(out var id))
        {
            if (found.Add(id))
            {
                foreach (var input in _knowledge.Quantities.First(q => q.Id == id).Inputs.Where(i => i.Only.Holds(_layout)))
                {
                    open.Push(input.Quantity);
                }
            }
        }

        return found;
    }

    private Reading Reading(Random random, Check check)
    {
        if (random.Next(12) == 0)
        {
            return new NotDoneReading("seized");
        }

        if (check.Number is not { } form)
        {
            var n = 1 + random.Next(4);
            return check.Count is not null && random.Next(2) == 0
                ? new CountReading(random.Next(n + 1), n)
                : new ChoiceReading(check.Choices[random.Next(check.Choices.Count)].Id);
        }

        if (form.Open && random.Next(2) == 0)
        {
            return new OpenReading();
        }

        // About the middle of one of the levels, so that readings of every sort occur.
        var rows = check.Likelihood.Densities.Values.ToArray();
        var spec = _knowledge.Specs.FirstOrDefault(s => s.Item == check.Likelihood.Reference && s.Only.Holds(_layout));
        var value = rows[random.Next(rows.Length)].Median * (spec?.Low ?? 1) * Math.Exp(0.3 * (random.NextDouble() - 0.5));
        var (unit, factor) = random.Next(2) == 0 ? (form.Unit, 1) : form.Unit switch
        {
            "V" => ("mV", 1e3),
            "ohm" => ("kohm", 1e-3),
            "kohm" => ("ohm", 1e3),
            "kPa" => ("bar", 0.01),
            "mm" => ("in", 1 / 25.4),
            var same => (same, 1.0),
        };
        return new NumberReading(Measured.Of(Math.Max(0.0001, value * factor).ToString("0.####", CultureInfo.InvariantCulture), unit));
    }

    /// <summary>Like parts two by two; of a part with outputs of its own, the outputs.</summary>
    private IEnumerable<Swap> Exchanges(PartKind kind)
    {
        var places = Places(kind.Id);
        var outputs = kind.Aspects.Any(a => a.PerCylinder && a.Only.Holds(_layout));
        return places.Length > 1 ? places.Zip(places.Skip(1), (a, b) => new Swap(kind.Id, Place.Parse(a), Place.Parse(b)))
            : places.Length == 1 && outputs ? [new Swap(kind.Id, Place.Parse("cyl:1"), Place.Parse("cyl:2"))] : [];
    }

    /// <summary>The cylinders that a part has an output for each of, if it has.</summary>
    private IEnumerable<int> Outputs(string kind, string place) => _parts.First(p => p.Kind == kind && p.Place == place) is var part
        && Aspects(kind).Any(a => a.PerCylinder) && part.Cylinders.Count > 1 ? part.Cylinders : [];

    /// <summary>A new fault and one that came back double the worlds too often: the invented engine has those.</summary>
    private static RemedyResult? Came(Random random) => random.Next(4) switch
    {
        0 => RemedyResult.Cured,
        1 => RemedyResult.InPart,
        2 => RemedyResult.NoChange,
        _ => null,
    };

    private Jobs.Remedy OfOneOutput(Random random, Knowledge.Remedy remedy, string place)
    {
        int[] outputs = [.. Outputs(remedy.Part, place)];
        return new Jobs.Remedy(remedy.Id, remedy.Revision, Place.Parse(place)) { Output = outputs[random.Next(outputs.Length)].ToString(CultureInfo.InvariantCulture), Result = Came(random) };
    }

    private string[] Places(string kind) => [.. _parts.Where(p => p.Kind == kind).Select(p => p.Place)];

    private IEnumerable<Aspect> Aspects(string kind) => _parts.Any(p => p.Kind == kind)
        ? _knowledge.Parts.First(p => p.Id == kind).Aspects.Where(a => a.Only.Holds(_layout)) : [];
}
