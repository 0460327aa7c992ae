using Undercowl.Diagnosis.Engine;
using Undercowl.Diagnosis.Graph;
using Undercowl.Diagnosis.History;
using Undercowl.Jobs;
using Undercowl.Knowledge;
using Undercowl.Physics;

namespace Undercowl.Diagnosis.Readings;

/// <summary>Lays checks over the network: finds what a check at a place reads in a context, and in which circumstances.</summary>
internal sealed class Laying(ConditionNodes conditions, Projection projection)
{
    /// <summary>Cranking speeds, rpm, that peak voltages can be carried from: the range of <see cref="CrankingPeakVoltage"/>.</summary>
    private const double LeastSpeed = 20;

    private const double MostSpeed = 10000;

    private readonly EngineModel _model = conditions.Model;
    private readonly Dictionary<(EngineState, bool), Dictionary<(int Quantity, int Cylinder, int Seen), Signal>> _copies = [];
    private PlausibleAir? _air;
    private (bool Known, double? Rpm) _speedNow;

    /// <summary>Set-up keys and values that this job has met.</summary>
    private readonly HashSet<(string Key, string Value)> _met = [
        .. projection.Complaints.SelectMany(c => c.SetUp).Select(p => (p.Key, p.Value)),
        .. projection.Findings.SelectMany(f => f.Body.SetUp).Select(p => (p.Key, p.Value))];

    /// <summary>The quantities of one engine state in one set-up; each is made once.</summary>
    public QuantityCopies Copies(EngineState state, IReadOnlyDictionary<string, string> setUp, bool provoked = false) => Copies(state, new SetUpState(_model, setUp), provoked);

    public QuantityCopies Copies(EngineState state, SetUpState setUp, bool provoked = false)
    {
        if (!_copies.TryGetValue((state, provoked), out var made))
        {
            _copies[(state, provoked)] = made = [];
        }

        return new QuantityCopies(conditions, new CopyContext(state, setUp, provoked ? _met : null), made);
    }

    /// <summary>What the check reads there; null when the place does not fit the layout.</summary>
    public (Signal Signal, IReadOnlyList<string> Levels)? Read(Check check, string place, QuantityCopies copies)
    {
        if (!LayoutPlaces.TryCylinders(_model.Layout, place, out var cylinders))
        {
            return null;
        }

        if (check.Likelihood.Quantity is { } quantity)
        {
            var known = _model.Quantity(quantity);
            return (copies.Of(quantity, known.Per == QuantityScope.Engine ? 0 : cylinders[0]), known.Levels);
        }

        if (check.Likelihood.Tool is { } tool)
        {
            var (owner, aspect) = ToolAspect(tool);
            return (new Signal(conditions.OfTool(owner, aspect), NodeGraph.Identity(aspect.Conditions.Count + 1)),
                [AspectInstance.Sound, .. aspect.Conditions.Select(c => c.Id)]);
        }

        var dot = check.Likelihood.Aspect!.LastIndexOf('.');
        var (kind, aspectId) = (check.Likelihood.Aspect[..dot], check.Likelihood.Aspect[(dot + 1)..]);
        var seat = Array.Find(_model.Parts, p => p.Kind.Id == kind && p.Place == place)
            ?? Array.Find(_model.Parts, p => p.Kind.Id == kind && cylinders.All(p.Serves));
        if (seat is null)
        {
            return null;
        }

        var first = Array.Find(_model.AspectsOf[seat.Index], a => a.Aspect.Id == aspectId);
        if (first is null)
        {
            return null;
        }

        var position = first.Position < 0 ? -1 : Math.Max(0, Array.IndexOf(seat.Cylinders, cylinders[0]));
        return (copies.Aspect(seat, aspectId, position), first.StateNames);
    }

    /// <summary>Lays a finding; null when its check, place or reading is unknown today: it stays in the log without effect.</summary>
    /// <param name="finding">The finding.</param>
    /// <param name="state">The engine when it was taken.</param>
    /// <param name="why">When null comes of it: what is not known.</param>
    public LaidFinding? Lay(FindingInContext finding, EngineState state, out string why)
    {
        why = "";
        var check = _model.Knowledge.CheckOf(finding.Body.Check);
        if (check is null)
        {
            why = $"There is no check \"{finding.Body.Check}\". {Near.Mend(finding.Body.Check, _model.Checks.Select(c => c.Id))}";
            return null;
        }

        if (finding.Body.Revision > check.Revision)
        {
            why = $"It was recorded with revision {finding.Body.Revision} of the check, and {check.Revision} is known.";
            return null;
        }

        if (ReadingLikelihood.Fault(check, finding.Body.Value) is { } fault)
        {
            why = fault;
            return null;
        }

        var read = Read(check, finding.Body.Place.Text, Copies(state, finding.Body.SetUp));
        if (read is not var (signal, levels))
        {
            why = $"It is not done at {finding.Body.Place} on this engine.";
            return null;
        }

        var tool = Erring(check, finding.Body.Tool);
        return new LaidFinding(
            finding,
            check,
            signal,
            levels,
            tool is null || check.Likelihood.Tool is not null ? -1 : conditions.OfTool(tool, tool.Aspects[0]),
            tool is null ? [] : [false, .. tool.Aspects[0].Conditions.Select(c => c.ReadsAsWorst)],
            Doubts.Of(_model.Knowledge, finding.Body.Hand, finding.Body.Hearsay),
            check.Likelihood.Model == LikelihoodModel.Gap ? SparkMargin.Numbers(_model, check.Likelihood.Quantity!) : null,
            new TakenReading(finding.Body.Value, finding.Body.SetUp, Circumstances(check, finding.Body.Place.Text, finding.Body.Tool, finding)));
    }

    /// <summary>The tool of a check whose own faults are modelled, if any: the one used in the place of what the check asks for, else the check's own.</summary>
    /// <param name="check">The check.</param>
    /// <param name="with">The tool that was named, if one was.</param>
    public Tool? Erring(Check check, string? with = null) =>
        _model.Knowledge.Tools.FirstOrDefault(t => t.Id == with && t.InsteadOf is { } other && check.Tools.Contains(other))
        ?? _model.Knowledge.Tools.FirstOrDefault(t => check.Tools.Contains(t.Id) && t.Aspects.Count > 0);

    /// <param name="check">The check.</param>
    /// <param name="place">Where.</param>
    /// <param name="tool">With what, when it is known.</param>
    /// <param name="at">The finding; null for a check done now.</param>
    public Circumstances Circumstances(Check check, string place, string? tool, FindingInContext? at = null)
    {
        var air = _air ??= PlausibleAir.Of(projection.Ambient);
        var shape = _model.Knowledge.Tools.FirstOrDefault(t => t.Id == tool)?.Shape
            ?? _model.Knowledge.Tools.FirstOrDefault(t => t.Shape is not null && check.Tools.Contains(t.Id))?.Shape;
        return new Circumstances(
            air.Celsius,
            air.Kilopascals,
            SpeedFound(at),
            _model.Knowledge.Specs.FirstOrDefault(s => s.Unit == "rpm" && s.Only.Holds(_model.Layout)) is { } speed
                ? new Reference(speed.Low, speed.High, speed.Unit, false, speed.Source).Middle : null,
            check.Likelihood.Reference is { } item and not DensityReadings.Absolute ? Judged(check, item, place) : null,
            shape is null ? null : Shape(shape),
            Leads(check, tool)?.LeadOhms ?? 0);
    }

    /// <summary>What a value is compared with: a generic figure moved to where the like places of this engine lie.</summary>
    private Reference? Judged(Check check, string item, string place) =>
        Reference(item, place) is { Own: false } generic && check.Likelihood is { Fellows: true, GenericSpread: > 0 and var range }
            ? Fellows.Beside(generic, range, Good(check).Spread, [.. ReadBeside(check, place)]) : Reference(item, place);

    /// <summary>The tool whose own leads are in a reading of resistance: the one used, else the check's own.</summary>
    public Tool? Leads(Check check, string? with) => check.Number is { Unit: var unit } && Units.Convert(1, unit, "ohm") is not null
        ? _model.Knowledge.Tools.FirstOrDefault(t => t.LeadOhms is not null && t.Id == with)
            ?? _model.Knowledge.Tools.FirstOrDefault(t => t.LeadOhms is not null && check.Tools.Contains(t.Id))
        : null;

    /// <summary>The engine's own spec when it was entered, for this place before all places; else the generic one.</summary>
    public Reference? Reference(string item, string place)
    {
        var own = projection.Specs.Values.Where(s => s.Body.Item == item)
            .OrderBy(s => s.Body.Part.Place is { } at ? at.Text == place ? 0 : 2 : 1)
            .FirstOrDefault(s => s.Body.Part.Place is not { } at || at.Text == place);
        if (own is not null)
        {
            var unit = (own.Body.Low ?? own.Body.High ?? own.Body.Nominal)!.Unit;
            var (low, high, nominal) = (In(own.Body.Low, unit), In(own.Body.High, unit), In(own.Body.Nominal, unit));
            return new Reference(low ?? (high is null ? nominal : null), high ?? (low is null ? nominal : null), unit, true, own.Body.Origin);
        }

        var generic = _model.Knowledge.Specs.FirstOrDefault(s => s.Item == item && s.Only.Holds(_model.Layout));
        return generic is null ? null : new Reference(generic.Low, generic.High, generic.Unit, false, generic.Source);
    }

    /// <summary>What was read at the other places by checks that are compared with the same figure: over what is good there, natural logarithm.</summary>
    private IEnumerable<double> ReadBeside(Check check, string place)
    {
        foreach (var finding in projection.Findings.Where(f => check.Likelihood.Fellows && f.Body.Place.Text != place))
        {
            if (finding.Body.Value is NumberReading { Number: var number } && _model.Knowledge.CheckOf(finding.Body.Check) is { Likelihood.Fellows: true } like
                && like.Likelihood.Reference == check.Likelihood.Reference
                && DensityReadings.Ratio(like, number, Circumstances(like with { Likelihood = like.Likelihood with { Fellows = false } }, finding.Body.Place.Text, finding.Body.Tool, finding)) is { } ratio and > 0)
            {
                yield return Math.Log(ratio / Good(like).Median);
            }
        }
    }

    /// <summary>What a check of a quantity reads of its best level.</summary>
    private DensityRow Good(Check check) => check.Likelihood.Densities[_model.Quantity(check.Likelihood.Quantity!).Levels[0]];

    /// <summary>Bounds may be written in different units, as 900 ohm to 1.2 kohm.</summary>
    private static double? In(Measured? said, string unit) => said is null ? null : Units.Convert((double)said.Value.Value, said.Unit, unit);

    private static ElectrodeShape Shape(string shape) =>
        Enum.Parse<ElectrodeShape>(shape.Replace("-", "", StringComparison.Ordinal), ignoreCase: true);

    /// <summary>
    /// The cranking speed found with the same swaps and remedies done, else the one found at all. Of several readings the
    /// geometric middle: which was written down last must not matter. What no peak voltage can be carried from is passed over.
    /// </summary>
    private double? SpeedFound(FindingInContext? at)
    {
        if (at is null && _speedNow.Known)
        {
            return _speedNow.Rpm;
        }

        var done = at is null
            ? Deeds(projection.Live.Where(e => e.Body is Swap or Jobs.Remedy).Select(e => e.Id))
            : Deeds(at);
        var all = new List<double>();
        var same = new List<double>();
        foreach (var found in projection.Findings)
        {
            if (found.Body.Value is NumberReading { Number: { Unit: "rpm" } read } && (double)read.Value.Value is var speed and >= LeastSpeed and <= MostSpeed)
            {
                all.Add(Math.Log(speed));
                if (done.SetEquals(Deeds(found)))
                {
                    same.Add(Math.Log(speed));
                }
            }
        }

        var logs = same.Count > 0 ? same : all;
        double? middle = logs.Count > 0 ? Math.Exp(logs.Average()) : null;
        _speedNow = at is null ? (true, middle) : _speedNow;
        return middle;
    }

    private static HashSet<EntryId> Deeds(FindingInContext finding) =>
        Deeds([.. finding.Swaps.Select(s => s.Entry.Id), .. finding.Remedies.Select(r => r.Entry.Id)]);

    private static HashSet<EntryId> Deeds(IEnumerable<EntryId> entries) => [.. entries];

    private (Tool Tool, ToolAspect Aspect) ToolAspect(string text)
    {
        var dot = text.LastIndexOf('.');
        var tool = _model.Knowledge.Tools.First(t => t.Id == text[..dot]);
        return (tool, tool.Aspects.First(a => a.Id == text[(dot + 1)..]));
    }
}
