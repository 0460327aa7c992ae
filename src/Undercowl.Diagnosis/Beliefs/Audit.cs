using Undercowl.Diagnosis.Answers;
using Undercowl.Diagnosis.Engine;
using Undercowl.Diagnosis.Graph;
using Undercowl.Diagnosis.Readings;
using Undercowl.Jobs;
using Undercowl.Knowledge;

namespace Undercowl.Diagnosis.Beliefs;

/// <summary>Gathers the numbers of the knowledge that a belief rests on, each with where it stands and whose it is.</summary>
internal sealed class Audit
{
    private readonly JobNetwork _network;
    private readonly HashSet<int> _touching;
    private readonly Dictionary<string, FactorAnswer> _found = [];
    private readonly Dictionary<string, Source> _sources;

    private Audit(JobNetwork network, int cause)
    {
        (_network, _touching) = (network, Touching.Nodes(network, cause));
        _sources = Knowledge.Sources.ToDictionary(s => s.Id);
    }

    private KnowledgeBase Knowledge => _network.Model.Knowledge;

    /// <summary>What touched one cause.</summary>
    public static AuditAnswer Of(JobNetwork network, Belief belief, AspectInstance aspect, int state) => new(
        1, aspect.CauseId(state), Words.Cause(aspect, state), belief.AsFound(aspect, state), new Audit(network, network.Conditions.First(aspect)).Factors(belief));

    /// <summary>What touched anything at all.</summary>
    public static IReadOnlyList<FactorAnswer> All(JobNetwork network, Belief belief) => new Audit(network, -1).Factors(belief);

    private List<FactorAnswer> Factors(Belief belief)
    {
        Complaints();
        foreach (var laid in _network.Laid.Where(l => Touches(l.Signal) || _touching.Contains(l.Tool)))
        {
            Reading(laid);
        }

        foreach (var (address, value, source, what) in InterviewNumbers.Of(_network, _touching))
        {
            Add(address, value, null, source, "reading", what);
        }

        foreach (var laid in _network.Results.Where(r => r.Told.Any(t => Touches(t.Signal))))
        {
            Result(laid);
        }

        Tools();
        Physics();
        Substitutes();
        // Likeliest first: that is what a reader looks for among many.
        var conditions = _network.Conditions.Versions.Where(v => _touching.Contains(v.Node))
            .SelectMany(v => Enumerable.Range(1, v.Aspect.StateNames.Length - 1).Select(s => (v.Node, v.Aspect, State: s, Found: belief.AsFound(v.Aspect, s))))
            .OrderByDescending(c => Math.Round(c.Found, 9)).ThenBy(c => c.Aspect.Index).ThenBy(c => c.State).ThenBy(c => c.Node);
        foreach (var (node, aspect, condition, _) in conditions)
        {
            Condition(node, aspect, condition);
        }

        return [.. _found.Values];
    }

    private bool Touches(Signal signal) => !signal.IsConstant && _touching.Contains(signal.Node);

    private void Complaints()
    {
        foreach (var said in _network.Projection.Complaints)
        {
            if (Knowledge.ComplaintOf(said.Id) is { } complaint && _network.ComplaintSignals.Any(Touches))
            {
                var quantity = _network.Model.Quantity(complaint.Quantity);
                foreach (var level in quantity.Levels)
                {
                    Add($"complaints/{complaint.Id}/given/{level}", complaint.Given[level], null, complaint.Source, "complaint", $"chance of \"{complaint.Name}\" where {quantity.Name} is {level}");
                }

                foreach (var (besides, level) in complaint.Also.SelectMany(b => b.Given.Keys, (b, l) => (b, l)))
                {
                    Add($"complaints/{complaint.Id}/also/{besides.Quantity}/given/{level}", besides.Given[level], null, complaint.Source, "complaint", $"chance of \"{complaint.Name}\" where {_network.Model.Quantity(besides.Quantity).Name} is {level} at another moment");
                }
            }
        }
    }

    private void Reading(LaidFinding laid)
    {
        var (check, model, at) = (laid.Check, laid.Check.Likelihood, $"checks/{laid.Check.Id}/likelihood");
        void Of(string number, double value, string what) => Add($"{at}/{number}", value, null, model.Source, "reading", $"{check.Name}: {what}");
        switch (model.Model)
        {
            case LikelihoodModel.Table when ReadingLikelihood.Choice(check, laid.Reading.Value) is { } choice:
                foreach (var level in laid.Levels)
                {
                    Of($"given/{level}/{choice}", model.Given[level][choice], $"chance of {Words.Reading(check, new ChoiceReading(choice))} where it is {level}");
                }

                break;
            case LikelihoodModel.Gap:
                Of("spread", model.Spread!.Value, "scatter of the voltage (standard deviation of its logarithm)");
                foreach (var level in _network.Model.Quantity(model.Quantity!).Levels)
                {
                    Numbers(_network.Model.Quantity(model.Quantity!), level);
                }

                break;
            case LikelihoodModel.Density:
                foreach (var level in laid.Levels)
                {
                    var row = model.Densities[level];
                    Of($"densities/{level}/median", row.Median, $"middle where it is {level}");
                    Of($"densities/{level}/spread", row.Spread, $"scatter where it is {level}");
                    if (check.Number!.Open)
                    {
                        Of($"densities/{level}/open", row.Open, $"chance of over range where it is {level}");
                    }
                }

                Figure(laid, Of);
                break;
            default:
                return;
        }

        if (_network.Laying.Leads(check, laid.Finding.Body.Tool) is { } meter)
        {
            Add($"tools/{meter.Id}/lead-ohms", meter.LeadOhms!.Value, "ohm", meter.Source, "tool", $"{meter.Name}: what its own leads may put in or leave out");
        }

        Of("fresh", model.Fresh, "chance that one look differs from the next");
        if (model.Outlier is { } outlier)
        {
            Of("outlier", outlier, "chance of a reading that has nothing to do with the case");
        }

        foreach (var (cap, i) in check.Caps.Select((c, i) => (c, i)).Where(_ => model.Model == LikelihoodModel.Density && laid.Reading.Circumstances.Reference is not { Own: true }))
        {
            Add($"checks/{check.Id}/caps/{i}/decibans", cap.Decibans, "decibans", cap.Source, "reading", $"{check.Name}: the most that it may weigh by a generic range");
        }

        var hand = Knowledge.Hands.FirstOrDefault(h => h.Doubt == laid.Doubt && (laid.Finding.Body.Hearsay || h.Id == laid.Finding.Body.Hand));
        if (hand is not null)
        {
            Add($"hands/{hand.Id}/doubt", hand.Doubt, null, hand.Source, "hand", $"chance that what the {hand.Name} reports has nothing to do with the case");
        }
    }

    /// <summary>What a number is compared with: the engine's own figure, or a generic one.</summary>
    private void Figure(LaidFinding laid, Action<string, double, string> of)
    {
        if (laid.Reading.Circumstances.Reference is not { } reference)
        {
            return;
        }

        var item = laid.Check.Likelihood.Reference;
        if (reference.Own)
        {
            Own($"specs entered: {item}", reference.Middle, reference.Unit, reference.From, "what the reading is divided by");
            return;
        }

        if (laid.Check.Likelihood.GenericSpread is { } generic)
        {
            of("generic-spread", generic, "further scatter, as only a generic range is known");
        }

        var spec = Knowledge.Specs.First(s => s.Item == item && s.Only.Holds(_network.Model.Layout));
        var key = KnowledgeNumbers.Key(Knowledge.Specs, spec, s => s.Item);
        foreach (var (bound, value) in new[] { ("low", spec.Low), ("high", spec.High) })
        {
            if (value is { } number)
            {
                Add($"specs/{key}/{bound}", number, spec.Unit, spec.Source, "spec", $"{spec.Name}, generic {bound} bound");
            }
        }
    }

    private void Result(LaidResult laid)
    {
        var remedy = Knowledge.RemedyOf(laid.Remedy.Body.Action)!;
        if (laid.Came is RemedyResult.InPart or RemedyResult.NoChange)
        {
            Better(Results.Noticed, "chance that what was mended is noticed while something is still wrong");
            Better(Results.Hoped, "chance that it is called better though nothing was mended");
        }

        foreach (var complaint in _network.Projection.Complaints.Select(s => Knowledge.ComplaintOf(s.Id)).OfType<Knowledge.Complaint>())
        {
            var test = Knowledge.Checks.First(c => c.Id == complaint.SystemTest);
            foreach (var (level, row) in test.Likelihood.Given)
            {
                foreach (var good in complaint.Good)
                {
                    Add($"checks/{test.Id}/likelihood/given/{level}/{good}", row.GetValueOrDefault(good), null, test.Likelihood.Source, "reading", $"{remedy.Name}, {Words.Result(laid.Came)}: chance of {good} where it is {level}");
                }
            }
        }
    }

    private void Better(string name, string what)
    {
        var chance = Results.Chance(_network.Model, name);
        Add($"results/{KnowledgeNumbers.Key(Knowledge.Results, chance, r => r.Name)}/value", chance.Value, null, chance.Source, "reading", what);
    }

    private void Tools()
    {
        foreach (var laid in _network.Laid.Where(l => l.Tool >= 0 && _touching.Contains(l.Tool)))
        {
            var tool = _network.Laying.Erring(laid.Check) ?? Knowledge.Tools.FirstOrDefault(t => laid.Check.Likelihood.Tool?.StartsWith(t.Id + ".", StringComparison.Ordinal) ?? false);
            foreach (var aspect in tool?.Aspects ?? [])
            {
                foreach (var condition in aspect.Conditions)
                {
                    Add($"tools/{tool!.Id}/aspects/{aspect.Id}/conditions/{condition.Id}/prior", condition.Prior, null, condition.Source, "tool", $"{tool.Name}: {condition.Name}");
                }
            }
        }
    }

    /// <summary>Numbers of the quantities that physics works out along the way.</summary>
    private void Physics()
    {
        var met = _touching.Where(n => _network.Graph[n].Function is not null).Select(n => _network.Graph[n].Name.Split('@', '#', '/')[0]).ToHashSet();
        foreach (var quantity in Knowledge.Quantities.Where(q => met.Contains(q.Id) && q.Combine is Combination.SparkInCylinder or Combination.SparkInAir))
        {
            foreach (var parameter in quantity.Parameters.Where(p => p.Only.Holds(_network.Model.Layout)).DistinctBy(p => p.Name))
            {
                Add($"quantities/{quantity.Id}/parameters/{KnowledgeNumbers.Key(quantity.Parameters, parameter, p => p.Name)}/value", parameter.Value, parameter.Unit, parameter.Source, "physics", $"{quantity.Name}: {parameter.Name}");
            }

            foreach (var input in quantity.Inputs.Select(i => _network.Model.Quantity(i.Quantity)))
            {
                foreach (var level in input.Levels)
                {
                    Numbers(input, level);
                }
            }
        }
    }

    private void Numbers(Quantity quantity, string level)
    {
        if (quantity.Numbers.FirstOrDefault(n => n.Level == level && n.Only.Holds(_network.Model.Layout)) is { } number)
        {
            Add($"quantities/{quantity.Id}/numbers/{KnowledgeNumbers.Key(quantity.Numbers, number, n => n.Level)}/value", number.Value, number.Unit, number.Source, "physics", $"{quantity.Name} where it is {level}");
        }
    }

    private void Substitutes()
    {
        if (!_touching.Any(n => _network.Graph[n].Name.StartsWith("known-good:", StringComparison.Ordinal)))
        {
            return;
        }

        var set = _network.Projection.Findings.SelectMany(f => f.Body.SetUp).Select(s => (Key: s.Key.Split('@')[0], s.Value)).ToHashSet();
        foreach (var key in Knowledge.SetUps)
        {
            foreach (var value in key.Values.Where(v => v.NotGood is not null && set.Contains((key.Id, v.Id))))
            {
                Add($"set-ups/{key.Id}/values/{value.Id}/not-good", value.NotGood!.Value, null, value.Source, "set-up", $"{value.Name}: chance that what is known to be good is not");
            }
        }
    }

    private void Condition(int node, AspectInstance aspect, int state)
    {
        var (condition, of) = (aspect.Conditions[state - 1], aspect.Aspect);
        var at = $"parts/{aspect.Part.Kind.Id}/aspects/{KnowledgeNumbers.Key(aspect.Part.Kind.Aspects, of, a => a.Id)}";
        var name = $"{aspect.Part.Kind.Name}: {condition.Name}";
        var key = KnowledgeNumbers.Key(of.Conditions, condition, c => c.Id);
        if (Remedied(node) is { } remedy)
        {
            Mended(remedy, aspect, name);
            return;
        }

        if (of.Given is { } given)
        {
            foreach (var (level, row) in given.Rows.Where(r => r.Value.ContainsKey(condition.Id)))
            {
                Add($"{at}/given/rows/{level}/{condition.Id}", row[condition.Id], null, given.Source, "given", $"{name}, where {_network.Model.Quantity(given.Quantity).Name} is {level}");
            }
        }

        if (of.Given is null || !_network.Model.Quantity(of.Given.Quantity).Levels.All(l => of.Given.Rows.GetValueOrDefault(l)?.ContainsKey(condition.Id) ?? false))
        {
            Add($"{at}/conditions/{key}/prior", condition.Prior, null, condition.Source, "prior", name);
        }

        if (condition.Shows is { } shows)
        {
            Add($"{at}/conditions/{key}/shows", shows, null, condition.Source, "intermittent", $"{name}: chance that it shows on an occasion");
        }
    }

    /// <summary>The remedy that made this version of a condition; null for one as found.</summary>
    private Knowledge.Remedy? Remedied(int node)
    {
        var made = _network.Graph[node].Name.Split('~');
        return made.Length < 2 ? null
            : _network.Projection.All<Jobs.Remedy>().FirstOrDefault(r => r.Id.ToString() == made[1]) is { } done ? Knowledge.RemedyOf(done.Body.Action) : null;
    }

    private void Mended(Knowledge.Remedy remedy, AspectInstance aspect, string name)
    {
        if (remedy.Replaces)
        {
            Add($"remedies/{remedy.Id}/new-part-bad", remedy.NewPartBad ?? 0, null, remedy.Source, "remedy", $"{remedy.Name}: chance that the new part is bad");
            return;
        }

        foreach (var cure in remedy.Cures.Where(c => c.Aspect == aspect.Aspect.Id))
        {
            Add($"remedies/{remedy.Id}/cures/{KnowledgeNumbers.Key(remedy.Cures, cure, c => c.Aspect)}/not-cured", cure.NotCured, null, remedy.Source, "remedy", $"{remedy.Name}: chance that it does not cure {name}");
        }
    }

    private void Own(string address, double value, string unit, string cite, string what) =>
        _found.TryAdd(address, new FactorAnswer(address, value, unit, null, "entered", cite, "spec", what));

    private void Add(string address, double value, string? unit, string? source, string use, string what)
    {
        var known = source is null ? null : _sources.GetValueOrDefault(source);
        _found.TryAdd(address, new FactorAnswer(address, value, unit, source, known is null ? "none" : Kind(known.Kind), known?.Cite ?? "", use, what));
    }

    public static string Kind(SourceKind kind) => kind switch
    {
        SourceKind.Publication => "publication",
        SourceKind.CommonPractice => "common-practice",
        SourceKind.FromMemory => "from-memory",
        _ => "estimate",
    };
}
