using Undercowl.Diagnosis.Answers;
using Undercowl.Diagnosis.Engine;
using Undercowl.Diagnosis.Graph;
using Undercowl.Diagnosis.History;
using Undercowl.Diagnosis.Safety;
using Undercowl.Jobs;
using Undercowl.Knowledge;

namespace Undercowl.Diagnosis.Planning;

/// <summary>
/// All checks that could be done next, in the engine as it stands and in the heat in which the complaint shows. Those that an
/// interlock withholds are kept apart, so that their worth can still be seen; those that cannot be done, or would only repeat a reading that errs the same way, are left out with the reason.
/// </summary>
internal sealed class Candidates
{
    /// <summary>A known-good part is fitted to learn about the part that it stands for, and not to read the rest once more: so often at least it must make a difference. Estimate.</summary>
    private const double WorthSubstituting = 0.05;

    private readonly JobNetwork _network;
    private readonly StandingEngine _standing;
    private readonly IReadOnlyList<InterlockStatus> _interlocks;
    private readonly Func<string, int, double[]> _levelChances;
    private readonly Func<Signal, Signal, double> _differing;
    private readonly Declined[] _declined;

    /// <param name="network">The job.</param>
    /// <param name="standing">The engine as it stands.</param>
    /// <param name="interlocks">How the interlocks stand.</param>
    /// <param name="levelChances">Chance of each level of a quantity (id, cylinder) now, in the engine as it stands.</param>
    /// <param name="differing">Chance that two signals have not the same level.</param>
    public Candidates(
        JobNetwork network, StandingEngine standing, IReadOnlyList<InterlockStatus> interlocks, Func<string, int, double[]> levelChances, Func<Signal, Signal, double> differing)
    {
        (_network, _standing, _interlocks, _levelChances, _differing) = (network, standing, interlocks, levelChances, differing);
        _declined = [.. network.Projection.All<Declined>().Select(d => d.Body)];
        foreach (var check in network.Model.Kept.Prepared(Standing(), Prepare))
        {
            var usual = Consider(check, null);
            if (check.InHeat is { } heated)
            {
                Consider(heated, check, usual);
            }
        }
    }

    public List<Candidate> Open { get; } = [];

    public List<(Candidate Candidate, InterlockStatus By)> Withheld { get; } = [];

    public List<NotProposed> Unavailable { get; } = [];

    public static IEnumerable<string> Places(EngineModel model, Check check) => check.At switch
    {
        "engine" => ["engine"],
        "cyl" => LayoutPlaces.Expand(model.Layout, LayoutPlaces.EachCylinder),
        _ => model.Parts.Where(p => p.Kind.Id == check.At).Select(p => p.Place),
    };

    /// <summary>Dangers of a check in a set-up.</summary>
    public static HashSet<string> Hazards(EngineModel model, Check check, IReadOnlyDictionary<string, string> setUp)
    {
        var hazards = new HashSet<string>(check.Hazards);
        foreach (var (name, text) in setUp)
        {
            var at = name.IndexOf('@', StringComparison.Ordinal);
            foreach (var hazard in model.SetUpKey(at < 0 ? name : name[..at])?.Values.FirstOrDefault(v => v.Id == text)?.Hazards ?? [])
            {
                hazards.Add(hazard);
            }
        }

        return hazards;
    }

    /// <summary>The heat in which the complaint shows, where the engine has another one now.</summary>
    private Dictionary<string, string> ComplainedOf() => _standing.HeatKeys()
        .Select(key => (key.Id, Now: _standing.Left.GetValueOrDefault(key.Id, key.Default), Wanted: _network.Projection.Complaints.Select(c => c.SetUp.GetValueOrDefault(key.Id)).FirstOrDefault(v => v is not null)))
        .Where(heat => heat.Wanted is { } wanted && wanted != heat.Now)
        .ToDictionary(heat => heat.Id, heat => heat.Wanted!);

    /// <summary>How the engine stands, and in which heat the complaint shows.</summary>
    private string Standing() => string.Join(';', [
        .. _standing.Left.Select(p => $"{p.Key}={p.Value}"),
        .. ComplainedOf().Select(p => $"!{p.Key}={p.Value}"),
        .. _standing.Restore.Select(r => r.Key)]);

    private PreparedCheck[] Prepare()
    {
        var complained = ComplainedOf();
        return [.. _network.Model.Checks.SelectMany(check => Places(_network.Model, check), (check, place) =>
            PreparedCheck.Of(_network.Model, check, place, _standing, null) with { InHeat = complained.Count == 0 ? null : PreparedCheck.Of(_network.Model, check, place, _standing, complained) })];
    }

    /// <param name="prepared">The check.</param>
    /// <param name="asItStands">Where this is in another heat than the engine has now: the check in the engine as it stands; else null.</param>
    /// <param name="usual">What came of that, not to be listed twice when the heat changes nothing of what is read.</param>
    private Candidate? Consider(PreparedCheck prepared, PreparedCheck? asItStands, Candidate? usual = null)
    {
        var model = _network.Model;
        var (check, place, setUp) = (prepared.Check, prepared.Place, prepared.SetUp);
        if (Reason(prepared) is { } reason)
        {
            if (asItStands is null)
            {
                Unavailable.Add(new NotProposed("check", check.Id, place, check.Name, reason));
            }

            return null;
        }

        var state = _network.Now;
        string? with = null;
        if (check.Swap is { } kind)
        {
            (with, var swapped) = Exchanged(kind, place, check, state);
            if (swapped is null)
            {
                return null;
            }

            state = swapped;
        }

        if (_network.Laying.Read(check, place, _network.Laying.Copies(state, prepared.State)) is not var (signal, levels))
        {
            return null;
        }

        var tool = check.Likelihood.Tool is null ? _network.Laying.Erring(check) : null;
        if ((signal.IsConstant && tool is null) || Repeats(check, place, signal))
        {
            return null;
        }

        if (prepared.Without is { } own && _network.Laying.Read(check, place, _network.Laying.Copies(state, own)) is var (without, _)
            && _differing(signal, without) < WorthSubstituting)
        {
            return null;
        }

        if (usual is not null && usual.Signal.Node == signal.Node)
        {
            return null;
        }

        var kilovolts = check.Likelihood.Model == LikelihoodModel.Gap ? SparkMargin.Numbers(model, check.Likelihood.Quantity!) : null;
        var candidate = new Candidate(
            check,
            place,
            with,
            setUp,
            signal,
            tool is null ? -1 : _network.Conditions.OfTool(tool, tool.Aspects[0]),
            tool is null ? [] : [false, .. tool.Aspects[0].Conditions.Select(c => c.ReadsAsWorst)],
            Outcomes(prepared, levels, kilovolts));
        if (_interlocks.FirstOrDefault(i => i.Holds(prepared.Hazards)) is { } closed)
        {
            Withheld.Add((candidate, closed));
        }
        else
        {
            Open.Add(candidate);
        }

        return candidate;
    }

    /// <summary>What the outcomes would be; of a choice by a table nothing but the check bears on that.</summary>
    private OutcomeTable Outcomes(PreparedCheck prepared, IReadOnlyList<string> levels, double?[]? kilovolts)
    {
        var check = prepared.Check;
        var at = check.Likelihood.Model == LikelihoodModel.Table ? null : _network.Laying.Circumstances(check, prepared.Place, null);
        return _network.Model.Kept.Outcomes(check.Id, at, check.Likelihood.Gap is { } gap ? prepared.SetUp.GetValueOrDefault(gap) : null, () =>
            OutcomeTable.Of(check, levels, at ?? _network.Laying.Circumstances(check, prepared.Place, null), kilovolts, prepared.SetUp));
    }

    private string? Reason(PreparedCheck prepared)
    {
        var (check, place) = (prepared.Check, prepared.Place);
        foreach (var tool in check.Tools)
        {
            if (_network.Projection.Tools.TryGetValue(tool, out var have) && !have)
            {
                return $"no {_network.Model.Knowledge.Tools.FirstOrDefault(t => t.Id == tool)?.Name ?? tool} at hand";
            }
        }

        foreach (var declined in _network.Projection.All<Declined>())
        {
            if (_network.Model.Knowledge.Today(declined.Body.What) == check.Id && (declined.Body.Place is not { } at || at.Text == place))
            {
                return $"declined: {declined.Body.Why}";
            }
        }

        foreach (var (value, quantity, levels) in prepared.Impossible)
        {
            var known = _network.Model.Quantity(quantity);
            var chances = _levelChances(quantity, 0);
            if (known.Levels.Select((l, i) => levels.Contains(l) ? chances[i] : 0).Sum() > 0.5)
            {
                return $"{value.Name} cannot be had now, judging by {known.Name}";
            }
        }

        return null;
    }

    /// <summary>The place to exchange with: the like part whose lanes are most likely sound.</summary>
    private (string? With, EngineState? State) Exchanged(string kind, string place, Check check, EngineState state)
    {
        var model = _network.Model;
        LayoutPlaces.TryCylinders(model.Layout, place, out var cylinders);
        var here = Array.Find(model.Parts, p => p.Kind.Id == kind && (p.Place == place || cylinders.All(p.Serves)));
        if (here is null || check.Likelihood.Quantity is not { } quantity)
        {
            return (null, null);
        }

        var other = model.Parts.Where(p => p.Kind.Id == kind && p.Index != here.Index && p.Cylinders.Length == here.Cylinders.Length)
            .OrderByDescending(p => Math.Round(_levelChances(quantity, p.Cylinders[0])[0], 9)).ThenBy(p => p.Index).FirstOrDefault();
        if (other is null)
        {
            return (null, null);
        }

        var occupant = (int[])state.Occupant.Clone();
        (occupant[here.Index], occupant[other.Index]) = (occupant[other.Index], occupant[here.Index]);
        return (other.Place, state with { Occupant = occupant });
    }

    /// <summary>A reading of the same copy at the same place with the same check would only err the same way again.</summary>
    private bool Repeats(Check check, string place, Signal signal) => _network.Laid.Any(l =>
        l.Check.Id == check.Id && l.Finding.Body.Place.Text == place && l.Signal.Node == signal.Node && l.Signal.Map.AsSpan().SequenceEqual(signal.Map)
        && l.Finding.Body.Value is not NotDoneReading && !OtherSetting(l, check, place));

    private bool OtherSetting(LaidFinding laid, Check check, string place) => check.Settings.Any(s =>
        SetUpResolution.Of(_network.Model, check, place, _standing).GetValueOrDefault(s.Id) != laid.Finding.Body.SetUp.GetValueOrDefault(s.Id));
}
