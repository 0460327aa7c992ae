using System.Globalization;
using Undercowl.Diagnosis.Answers;
using Undercowl.Diagnosis.Beliefs;
using Undercowl.Diagnosis.Engine;
using Undercowl.Diagnosis.Readings;

namespace Undercowl.Diagnosis.Working;

/// <summary>Puts the engine, what is believed of its parts and what was read at them into an <see cref="EngineAnswer"/>.</summary>
internal static class EngineShown
{
    /// <summary>A fault is named with its part when it is at least this likely.</summary>
    private const double WorthNaming = 0.005;

    /// <summary>A reading speaks for the best or against it when it makes the best this much likelier or less likely than the worst.</summary>
    private const double Speaks = 1.5;

    public static EngineAnswer Of(JobDiagnosis diagnosis, Belief belief)
    {
        var model = diagnosis.Network.Model;
        var read = diagnosis.Network.Laid.Reverse().Select(l => (l.Check.At, Place: l.Finding.Body.Place.Text, Told: Read(l))).ToArray();
        return new EngineAnswer(
            model.Layout.Name,
            model.Layout.Cylinders,
            [.. model.Parts.Select(p => Block(model, belief, p, [.. read.Where(r => r.At == p.Kind.Id && r.Place == p.Place).Select(r => r.Told)]))],
            [.. Enumerable.Range(1, model.Layout.Cylinders).Select(c => new LaneAnswer(c, [.. read.Where(r => r.At == "cyl" && r.Place == $"cyl:{c.ToString(CultureInfo.InvariantCulture)}").Select(r => r.Told)]))],
            [.. read.Where(r => r.At == "engine").Select(r => r.Told)],
            Standing(diagnosis, model));
    }

    private static BlockAnswer Block(EngineModel model, Belief belief, PartInstance part, IReadOnlyList<ReadAnswer> readings)
    {
        double now = 0, asFound = 0, likeliest = 0;
        (AspectInstance Aspect, int State)? fault = null;
        foreach (var aspect in model.AspectsOf[part.Index].Where(a => !a.Aspect.Consequence))
        {
            now = Math.Max(now, 1 - belief.Now(aspect, 0));
            asFound = Math.Max(asFound, 1 - belief.AsFound(aspect, 0));
            for (var s = 1; s < aspect.StateNames.Length; s++)
            {
                if (belief.Now(aspect, s) is var p && p > likeliest)
                {
                    (likeliest, fault) = (p, (aspect, s));
                }
            }
        }

        var named = likeliest >= WorthNaming ? fault : null;
        return new BlockAnswer(
            part.Id, part.Kind.Id, Words.Part(part), part.Kind.Name, part.Kind.Path.ToString().ToLowerInvariant(), part.Cylinders, now, asFound,
            named is { } f ? f.Aspect.Conditions[f.State - 1].Name : null, named?.Aspect.CauseId(named.Value.State), readings);
    }

    private static ReadAnswer Read(LaidFinding laid)
    {
        var group = new ReadingGroup(laid.Check, laid.Levels, laid.Doubt, [laid.Reading], laid.Kilovolts);
        var says = ReadingLikelihood.Of(group) is { Length: > 1 } perLevel
            ? perLevel[0] > Speaks * perLevel[^1] ? "good" : perLevel[^1] > Speaks * perLevel[0] ? "bad" : "neither"
            : "neither";
        return new ReadAnswer(laid.Label, laid.Check.Name, Words.Reading(laid.Check, laid.Finding.Body.Value), Spec(laid.Reading.Circumstances.Reference), says);
    }

    private static string? Spec(Reference? held) => held switch
    {
        null or { Low: null, High: null } => null,
        { Low: { } low, High: { } high } => Said(held, string.Create(CultureInfo.InvariantCulture, $"{low:0.###} to {high:0.###} {held.Unit}")),
        { Low: { } low } => Said(held, string.Create(CultureInfo.InvariantCulture, $"at least {low:0.###} {held.Unit}")),
        { High: { } high } => Said(held, string.Create(CultureInfo.InvariantCulture, $"at most {high:0.###} {held.Unit}")),
    };

    private static string Said(Reference held, string range) => held.Own ? $"{range}, this engine's own" : $"{range}, generic";

    private static StandingAnswer[] Standing(JobDiagnosis diagnosis, EngineModel model)
    {
        var undo = diagnosis.Restore.ToDictionary(r => r.Key);
        return
        [
            .. undo.Values.Select(r => new StandingAnswer(r.Key, r.What, r.How)),
            .. diagnosis.Standing.Left
                .Where(s => !undo.ContainsKey(s.Key) && model.SetUpKey(s.Key.Split('@')[0]) is { } key && key.Default != s.Value)
                .OrderBy(s => s.Key, StringComparer.Ordinal)
                .Select(s => new StandingAnswer(s.Key, Words.State(model, s.Key, s.Value), null)),
        ];
    }
}
