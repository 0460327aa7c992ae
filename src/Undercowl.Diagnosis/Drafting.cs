using System.Globalization;
using System.Text.Json;
using Undercowl.Diagnosis.Engine;
using Undercowl.Diagnosis.History;
using Undercowl.Diagnosis.Planning;
using Undercowl.Diagnosis.Readings;
using Undercowl.Diagnosis.Safety;
using Undercowl.Jobs;
using Undercowl.Knowledge;
using Undercowl.Physics;

namespace Undercowl.Diagnosis;

/// <summary>
/// Turns what a person says into entry bodies, checked against the knowledge: the whole set-up resolved, a new occasion
/// where one begins, and a warning where an interlock was passed over. Nothing is recorded here.
/// </summary>
public static class Drafting
{
    /// <summary>A reading, with what must be recorded before it.</summary>
    /// <param name="diagnosis">The job as it is.</param>
    /// <param name="said">What was done and seen.</param>
    public static Draft Finding(JobDiagnosis diagnosis, SaidFinding said)
    {
        ArgumentNullException.ThrowIfNull(diagnosis);
        ArgumentNullException.ThrowIfNull(said);
        var model = diagnosis.Network.Model;
        var check = model.Checks.FirstOrDefault(c => c.Id == said.Check)
            ?? throw new DiagnosisException($"There is no check \"{said.Check}\" for this engine.", Near.Mend(said.Check, model.Checks.Select(c => c.Id)));
        var place = PlaceOf(model, check, said.Place);
        var setUp = SetUpResolution.Of(model, check, place.Text, diagnosis.Standing, said.SetUp);
        var before = new List<EntryBody>();
        var warnings = new List<string>();
        if (check.Swap is { } kind)
        {
            var with = said.With ?? throw new DiagnosisException($"\"{check.Name}\" exchanges two parts.", "Say where the other one sits, for example --with cyl:3.");
            before.Add(Swap(diagnosis, kind, SeatOf(model, kind, place, with), with).Bodies[0]);
        }

        var occasion = Occasion(diagnosis, check, place, setUp, before);
        var hazards = Candidates.Hazards(model, check, setUp);
        var against = Against(diagnosis, hazards, warnings);
        var reading = ReadingOf(check, said.Reading, warnings);
        var finding = new Finding(check.Id, check.Revision, place, setUp, occasion ?? "", Hand(model, said.Hand), reading)
        {
            Tool = said.Tool ?? check.Tools.FirstOrDefault(t => model.Knowledge.Tools.Any(k => k.Id == t && (k.Shape is not null || k.Aspects.Count > 0))),
            Against = against.Count > 0 ? against : null,
            Hearsay = said.Hearsay,
            Words = said.Words,
        };
        if (said.Tool is { } tool && !model.Knowledge.Tools.Any(t => t.Id == tool))
        {
            throw new DiagnosisException($"There is no tool \"{tool}\".", Near.Mend(tool, model.Knowledge.Tools.Select(t => t.Id)));
        }

        Measurable(diagnosis, check, finding);
        foreach (var spared in model.Knowledge.Hands.First(h => h.Id == finding.Hand).Spared.Where(hazards.Contains))
        {
            warnings.Add($"This is not asked of the {finding.Hand}: {spared.Replace('-', ' ')}.");
        }

        return new Draft([.. before, finding], warnings) { TakenOver = TakenOver(diagnosis, check, place, setUp, said) };
    }

    /// <summary>The air around the engine, in the range in which spark and gauge readings can be corrected for it.</summary>
    public static Draft Air(Ambient ambient)
    {
        ArgumentNullException.ThrowIfNull(ambient);
        return PlausibleAir.Fault(ambient) is { } fault ? throw new DiagnosisException(fault, "Measure again, or leave it out.") : new Draft([ambient], []);
    }

    /// <summary>Two like parts, or two outputs of one part, that traded places; refuses what this engine has nothing to exchange with.</summary>
    public static Draft Swap(JobDiagnosis diagnosis, string part, string a, string b)
    {
        ArgumentNullException.ThrowIfNull(diagnosis);
        var model = diagnosis.Network.Model;
        var kind = model.Knowledge.Parts.FirstOrDefault(p => p.Id == part && model.HasPart(p.Id))
            ?? throw new DiagnosisException($"There is no part \"{part}\" on this engine.", Near.Mend(part, model.Parts.Select(p => p.Kind.Id)));
        var places = Exchanges.Places(model, kind);
        if (places.Length < 2)
        {
            throw new DiagnosisException(
                kind.Swappable ? $"There is one {kind.Name} on this engine, and nothing to exchange it with." : $"Parts of the kind {kind.Name} are not exchanged for a test.",
                $"These can be exchanged: {string.Join(", ", Exchanges.Kinds(model).Select(k => k.Id))}.");
        }

        foreach (var place in (ReadOnlySpan<string>)[a, b])
        {
            if (!places.Contains(place))
            {
                throw new DiagnosisException($"There is no {kind.Name} at {place}.", Near.Mend(place, places));
            }
        }

        if (a == b)
        {
            throw new DiagnosisException($"The {kind.Name} at {a} cannot be exchanged with itself.", $"Name two of: {string.Join(", ", places)}.");
        }

        return Exchanges.Between(model, kind, a, b)
            ? new Draft([new Swap(part, Place.Parse(a), Place.Parse(b))], [])
            : throw new DiagnosisException($"The {kind.Name} at {a} and that at {b} cannot trade places.", "Name two like parts, or two outputs of one part.");
    }

    /// <summary>
    /// An exchange and what the fault did by it: <c>moved</c> (each place reads what the other read before), <c>stayed</c> (each reads
    /// what it did) or <c>cleared</c> (both read as the better one did). The readings are those last taken there by a check that was taken
    /// at both places and told them apart, in the engine as it stands.
    /// </summary>
    /// <param name="diagnosis">The job as it is.</param>
    /// <param name="part">The sort of part.</param>
    /// <param name="a">One place.</param>
    /// <param name="b">The other.</param>
    /// <param name="then">What the fault did, or null to say it by readings.</param>
    public static Draft Swap(JobDiagnosis diagnosis, string part, string a, string b, string? then) =>
        then is null ? Swap(diagnosis, part, a, b) : new Draft([.. Swap(diagnosis, part, a, b).Bodies, .. ReadAfterSwap.Of(diagnosis, part, a, b, then)], []);

    /// <summary>Something was put right; refuses what this engine has not.</summary>
    /// <param name="diagnosis">The job as it is.</param>
    /// <param name="action">The remedy by id.</param>
    /// <param name="at">Where; may be left out when there is one place only.</param>
    /// <param name="output">Which output of the part, when not the whole.</param>
    /// <param name="result">What came of it, in the words of the log; null while it is not known.</param>
    public static Draft Remedy(JobDiagnosis diagnosis, string action, string? at, string? output = null, string? result = null)
    {
        ArgumentNullException.ThrowIfNull(diagnosis);
        var model = diagnosis.Network.Model;
        var remedy = model.Remedies.FirstOrDefault(r => r.Id == action)
            ?? throw new DiagnosisException($"There is no remedy \"{action}\" for this engine.", Near.Mend(action, model.Remedies.Select(r => r.Id)));
        string[] places = [.. model.Parts.Where(p => p.Kind.Id == remedy.Part).Select(p => p.Place)];
        var place = at ?? (places.Length == 1 ? places[0] : throw new DiagnosisException($"\"{remedy.Name}\" can be done at several places.", $"Say where: {string.Join(", ", places)}."));
        if (output is not null && places.Contains(place))
        {
            Output(model, remedy, place, output);
        }

        return places.Contains(place)
            ? new Draft([new Jobs.Remedy(remedy.Id, remedy.Revision, Place.Parse(place)) { Output = output, Result = result is null ? null : Came(result) }], [.. diagnosis.Interlocks.Where(i => i.Holds(remedy)).Select(Withheld)])
            : throw new DiagnosisException($"\"{remedy.Name}\" cannot be done at {place}.", Near.Mend(place, places));
    }

    /// <summary>What came of an earlier remedy, known only now.</summary>
    /// <param name="diagnosis">The job as it is.</param>
    /// <param name="came">In the words of the log.</param>
    /// <param name="remedy">The remedy's entry; null for the last one.</param>
    public static Draft Result(JobDiagnosis diagnosis, string came, EntryId? remedy = null)
    {
        ArgumentNullException.ThrowIfNull(diagnosis);
        EntryId[] done = [.. diagnosis.Projection.All<Jobs.Remedy>().Select(r => r.Id)];
        return done.Length == 0 ? throw new DiagnosisException("No remedy has been recorded, so nothing can have come of one.", "Record the remedy first.")
            : remedy is { } meant && !done.Contains(meant) ? throw new DiagnosisException($"Entry {meant} is no remedy of this job.", "Name the entry of a remedy, or leave it out for the last one.")
            : new Draft([new Result(remedy ?? done[^1], Came(came))], []);
    }

    /// <summary>The words for what came of a remedy, as the log has them.</summary>
    public static IReadOnlyList<string> Results { get; } = [.. Enum.GetValues<RemedyResult>().Select(Word)];

    /// <summary>The log's word for what came of a remedy.</summary>
    public static string Word(RemedyResult came) => JsonNamingPolicy.KebabCaseLower.ConvertName(came.ToString());

    private static RemedyResult Came(string text) => Enum.GetValues<RemedyResult>().Where(r => Word(r) == text).Select(r => (RemedyResult?)r).FirstOrDefault()
        ?? throw new DiagnosisException($"\"{text}\" is not what can come of a remedy.", Near.Mend(text, Results));

    /// <summary>Where the part sits that a check at this place exchanges with that elsewhere; the place itself when there is none, so that it is refused by name.</summary>
    private static string SeatOf(EngineModel model, string part, Place place, string with) =>
        model.Knowledge.Parts.FirstOrDefault(p => p.Id == part) is { } kind && !Exchanges.Between(model, kind, place.Text, with) && LayoutPlaces.TryCylinders(model.Layout, place.Text, out var lanes)
            ? model.Parts.FirstOrDefault(p => p.Kind.Id == part && lanes.All(p.Serves))?.Place ?? place.Text
            : place.Text;

    /// <summary>Refuses an output that the part has not.</summary>
    private static void Output(EngineModel model, Knowledge.Remedy remedy, string place, string output)
    {
        var part = model.Parts.First(p => p.Kind.Id == remedy.Part && p.Place == place);
        string[] outputs = Exchanges.Outputs(model, part) ? [.. part.Cylinders.Select(c => c.ToString(CultureInfo.InvariantCulture))] : [];
        if (!outputs.Contains(output))
        {
            throw outputs.Length == 0
                ? new DiagnosisException($"The {part.Kind.Name} has no outputs of its own.", "Leave --output out.")
                : new DiagnosisException($"The {part.Kind.Name} has no output \"{output}\".", $"Use one of: {string.Join(", ", outputs)}.");
        }
    }

    /// <summary>A change of the engine as it stands, <c>key</c> or <c>key@place</c> to a value; a change of heat begins an occasion.</summary>
    public static Draft SetUp(JobDiagnosis diagnosis, IReadOnlyDictionary<string, string> changes)
    {
        ArgumentNullException.ThrowIfNull(diagnosis);
        ArgumentNullException.ThrowIfNull(changes);
        var model = diagnosis.Network.Model;
        var any = model.Knowledge.Checks[0] with { SetUp = [], Settings = [] };
        _ = SetUpResolution.Of(model, any, "engine", diagnosis.Standing, changes);
        var heat = diagnosis.Standing.HeatKeys().FirstOrDefault(k => changes.ContainsKey(k.Id));
        var rest = changes.Where(c => c.Key != heat?.Id).ToDictionary(c => c.Key, c => c.Value);
        return new Draft(
            [
                .. heat is null ? (EntryBody[])[] : [new Occasion(Enum.Parse<Heat>(changes[heat.Id], ignoreCase: true), "the engine is now " + changes[heat.Id])],
                .. rest.Count == 0 ? (EntryBody[])[] : [new SetUpChange(rest)],
            ],
            []);
    }

    /// <summary>What the set-up holds only because the engine stands so: neither the check nor the person said it.</summary>
    private static List<TakenState> TakenOver(JobDiagnosis diagnosis, Check check, Place place, Dictionary<string, string> setUp, SaidFinding said)
    {
        var model = diagnosis.Network.Model;
        var taken = new List<TakenState>();
        foreach (var (name, value) in diagnosis.Standing.Left.OrderBy(s => s.Key, StringComparer.Ordinal))
        {
            var usual = model.SetUpKey(name.Split('@')[0])!.Default;
            if (value != usual && setUp.GetValueOrDefault(name) == value && said.SetUp?.ContainsKey(name) != true && !SetUpResolution.Brings(check, place.Text, name))
            {
                taken.Add(new TakenState(name, value, Words.State(model, name, value), usual));
            }
        }

        return taken;
    }

    /// <summary>Where a check can be done on this engine.</summary>
    public static IReadOnlyList<string> Places(JobDiagnosis diagnosis, Check check)
    {
        ArgumentNullException.ThrowIfNull(diagnosis);
        ArgumentNullException.ThrowIfNull(check);
        return [.. Candidates.Places(diagnosis.Network.Model, check)];
    }

    /// <summary>The dangers of a check as it was proposed: its own and those of its set-up.</summary>
    public static IReadOnlyCollection<string> Hazards(JobDiagnosis diagnosis, Answers.ProposedStep step)
    {
        ArgumentNullException.ThrowIfNull(diagnosis);
        ArgumentNullException.ThrowIfNull(step);
        var model = diagnosis.Network.Model;
        return model.Checks.FirstOrDefault(c => c.Id == step.Id) is { } check ? Candidates.Hazards(model, check, step.SetUp) : [];
    }

    private static Place PlaceOf(EngineModel model, Check check, string? said)
    {
        string[] places = [.. Candidates.Places(model, check)];
        if (said is null)
        {
            return places.Length == 1
                ? Place.Parse(places[0])
                : throw new DiagnosisException($"\"{check.Name}\" can be done at several places.", $"Say where: --at {string.Join(", ", places)}.");
        }

        return places.Contains(said) ? Place.Parse(said) : throw new DiagnosisException($"\"{check.Name}\" cannot be done at {said}.", Near.Mend(said, places));
    }

    private static string Hand(EngineModel model, string? hand)
    {
        var hands = model.Knowledge.Hands;
        return hand is null ? hands[0].Id
            : hands.Any(h => h.Id == hand) ? hand
            : throw new DiagnosisException($"There is no hand \"{hand}\".", Near.Mend(hand, hands.Select(h => h.Id)));
    }

    /// <summary>
    /// The occasion the finding belongs to: the latest entry that began one, or the opening. When the set-up has another
    /// heat than the engine has now, or the check handles parts, a new one begins first; then the caller fills in its id.
    /// </summary>
    private static string? Occasion(JobDiagnosis diagnosis, Check check, Place place, Dictionary<string, string> setUp, List<EntryBody> before)
    {
        var heat = diagnosis.Standing.HeatKeys().FirstOrDefault();
        var now = heat is null ? null : diagnosis.Standing.Left.GetValueOrDefault(heat.Id, heat.Default);
        if (heat is not null && setUp.TryGetValue(heat.Id, out var wanted) && wanted != now)
        {
            before.Add(new Occasion(Enum.Parse<Heat>(wanted, ignoreCase: true), $"the engine is now {wanted}"));
            return null;
        }

        if (check.Handles.Count > 0 && now is not null)
        {
            var model = diagnosis.Network.Model;
            LayoutPlaces.TryCylinders(model.Layout, place.Text, out var cylinders);
            PartId[] handled = [.. model.Parts
                .Where(p => check.Handles.Contains(p.Kind.Id) && cylinders.Any(p.Serves))
                .Select(p => PartId.Of(p.Kind.Id, Place.Parse(p.Place)))];
            if (handled.Length > 0)
            {
                before.Add(new Occasion(Enum.Parse<Heat>(now, ignoreCase: true), $"handled: {check.Name}", handled));
                return null;
            }
        }

        return diagnosis.Projection.All<Occasion>().LastOrDefault()?.Id.ToString() ?? EngineState.Opening;
    }

    /// <summary>Refuses a gap that the breakdown law of the tester does not reach.</summary>
    private static void Measurable(JobDiagnosis diagnosis, Check check, Finding finding)
    {
        if (check.Likelihood.Model != LikelihoodModel.Gap)
        {
            return;
        }

        try
        {
            GapReadings.Breakdown(new TakenReading(finding.Value, finding.SetUp, diagnosis.Network.Laying.Circumstances(check, finding.Place.Text, finding.Tool)), check.Likelihood.Gap!);
        }
        catch (PhysicsRangeException error)
        {
            throw new DiagnosisException($"The tester gap of \"{finding.SetUp[check.Likelihood.Gap!]}\" cannot be judged.", error.Message);
        }
    }

    private static List<string> Against(JobDiagnosis diagnosis, HashSet<string> hazards, List<string> warnings)
    {
        var against = new List<string>();
        foreach (var closed in diagnosis.Interlocks.Where(i => i.Holds(hazards)))
        {
            against.Add(closed.Interlock.Id);
            warnings.Add(Withheld(closed));
        }

        return against;
    }

    private static string Withheld(InterlockStatus by) => $"This was withheld: {by.Reason}";

    private static Reading ReadingOf(Check check, string text, List<string> warnings)
    {
        var trimmed = text.Trim();
        if (trimmed.StartsWith("not-done", StringComparison.Ordinal))
        {
            var why = trimmed["not-done".Length..].Trim(' ', ':');
            return new NotDoneReading(why.Length == 0 ? "no reason given" : why);
        }

        if (check.Number is { } form)
        {
            if (form.Open && trimmed is "open" or "OL" or "over-range")
            {
                return new OpenReading();
            }

            // Nothing is nothing in any unit; any other number could be meant in several.
            if (decimal.TryParse(trimmed, NumberStyles.Float, CultureInfo.InvariantCulture, out var bare) && bare != 0 && Units.Like(form.Unit).Count() > 1)
            {
                throw new DiagnosisException($"{trimmed} has no unit.", $"Say it with one of {string.Join(", ", Units.Like(form.Unit))}, as {trimmed}{form.Unit}.");
            }

            var number = Measurement.TryParse(trimmed, form.Unit) is { } measured && Units.Convert((double)measured.Value.Value, measured.Unit, form.Unit) is { } value
                ? (Measured: measured, Value: value)
                : throw new DiagnosisException(
                    $"\"{text}\" is no reading of \"{check.Name}\".",
                    $"Give a number in {string.Join(", ", Units.Like(form.Unit))}{(form.Open ? ", or open when the meter shows overload" : "")}, or not-done: why.");
            if (number.Value < 0 && form.Low >= 0)
            {
                throw new DiagnosisException($"{number.Measured} is no reading of \"{check.Name}\": it is never below 0.", "Give the number without the minus, or measure again.");
            }

            if (number.Value == 0 && form.Zero is { } zero)
            {
                warnings.Add($"{number.Measured} says {zero}. Withdraw it if that was not seen.");
            }
            else if (number.Value < form.Low || number.Value > form.High)
            {
                warnings.Add(string.Create(CultureInfo.InvariantCulture,
                    $"{number.Measured} is outside {form.Low} to {form.High} {form.Unit}, where readings of this check lie: is the unit right? Withdraw it if not."));
            }

            return new NumberReading(number.Measured);
        }

        if (Count(trimmed) is var (k, n))
        {
            return check.Count is not null
                ? new CountReading(k, n)
                : throw new DiagnosisException($"\"{check.Name}\" is not counted.", $"Use one of: {string.Join(", ", check.Choices.Select(c => c.Id))}.");
        }

        return check.Choices.Any(c => c.Id == trimmed)
            ? new ChoiceReading(trimmed)
            : throw new DiagnosisException($"\"{text}\" is no answer of \"{check.Name}\".", Near.Mend(trimmed, check.Choices.Select(c => c.Id).Append("not-done")));
    }

    private static (long K, long N)? Count(string text)
    {
        var parts = text.Split([' ', '/'], StringSplitOptions.RemoveEmptyEntries).Where(p => p != "of").ToArray();
        return parts.Length == 2 && long.TryParse(parts[0], NumberStyles.None, CultureInfo.InvariantCulture, out var k)
            && long.TryParse(parts[1], NumberStyles.None, CultureInfo.InvariantCulture, out var n) && n > 0 && k <= n ? (k, n) : null;
    }
}

/// <summary>What a person says of a check that was done.</summary>
/// <param name="Check">The check by id.</param>
/// <param name="Reading">As typed: a choice, <c>2 of 3</c>, a number with unit, <c>open</c>, or <c>not-done: why</c>.</param>
/// <param name="Place">Where; may be left out when there is one place only.</param>
public sealed record SaidFinding(string Check, string Reading, string? Place = null)
{
    /// <summary>Where the other part sits, for a check that exchanges two.</summary>
    public string? With { get; init; }

    public IReadOnlyDictionary<string, string>? SetUp { get; init; }

    public string? Tool { get; init; }

    public string? Hand { get; init; }

    public bool Hearsay { get; init; }

    public string? Words { get; init; }
}

/// <summary>Entry bodies to be recorded in this order, and what the user must be told.</summary>
public sealed record Draft(IReadOnlyList<EntryBody> Bodies, IReadOnlyList<string> Warnings)
{
    /// <summary>States that a reading was drafted in because the engine stands so, other than the usual ones.</summary>
    public IReadOnlyList<TakenState> TakenOver { get; init; } = [];
}

/// <summary>A state of the engine that a reading took over from how it stands.</summary>
/// <param name="SetUp">The key, with its place where it has one.</param>
/// <param name="Value">The value taken over.</param>
/// <param name="Name">The same in words.</param>
/// <param name="Usual">The value that the key has when nothing is said.</param>
public sealed record TakenState(string SetUp, string Value, string Name, string Usual);
