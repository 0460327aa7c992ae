using System.Globalization;
using Undercowl.Diagnosis.Engine;
using Undercowl.Diagnosis.Graph;
using Undercowl.Jobs;

namespace Undercowl.Diagnosis.History;

/// <summary>
/// Folds swaps, remedies and occasions over the engine as it came in. States are kept by the deeds that led to them, so
/// findings with the same past share theirs.
/// </summary>
internal sealed class EngineHistory(ConditionNodes conditions, Projection projection)
{
    private readonly EngineModel _model = conditions.Model;
    private readonly Dictionary<string, EngineState> _after = new(StringComparer.Ordinal);
    private readonly Dictionary<EntryId, int> _order = projection.Job.Entries.Index().ToDictionary(pair => pair.Item.Id, pair => pair.Index);

    /// <summary>The engine when a finding was taken: after the deeds among its causal ancestors.</summary>
    public EngineState Before(FindingInContext finding) => After([
        .. finding.Swaps.Select(s => s.Entry), .. finding.Remedies.Select(s => s.Entry), .. finding.Occasions.Select(s => s.Entry)]);

    /// <summary>
    /// The engine as it came in, at another moment than that of the complaint: what comes and goes may show or not, what passes (a lanyard
    /// off, a lever in gear) stands. Each number is a moment of its own.
    /// </summary>
    public EngineState AnotherMoment(int number) =>
        Handled(conditions.AsFound, string.Create(CultureInfo.InvariantCulture, $"another moment {number}"), [.. _model.Parts.Select(p => p.Index)]);

    /// <summary>The engine when a remedy had been done: after the deeds among its causal ancestors, and it.</summary>
    /// <param name="remedy">The remedy's entry.</param>
    /// <param name="later">When given: a new occasion of this name has begun since.</param>
    public EngineState AfterRemedy(Entry remedy, string? later = null)
    {
        var state = After([.. Behind(remedy), remedy]);
        return later is null ? state : Begun(state, new Occasion(Heat.Cold, later), $"{remedy.Id} {later}");
    }

    /// <summary>The engine when the complaint was last tried before a remedy: after the last remedy of which the result is known, else as it came in.</summary>
    public EngineState LastTriedBefore(Entry remedy) => Tried(remedy) is { } tried ? AfterRemedy(tried) : conditions.AsFound;

    /// <summary>What the remedy, and those before it of which no result is known, act on since the complaint was last tried.</summary>
    public IEnumerable<AspectInstance> MendedSinceTried(Entry remedy)
    {
        var tried = Tried(remedy);
        return Behind(remedy).Append(remedy)
            .Where(e => e.Body is Jobs.Remedy && (tried is null || projection.Precedes(tried.Id, e.Id)))
            .SelectMany(e => ActedOn(e.Id == remedy.Id ? After([.. Behind(remedy)]) : After([.. Behind(e)]), (Jobs.Remedy)e.Body))
            .DistinctBy(a => a.Index);
    }

    /// <summary>The engine now: after all deeds that hold.</summary>
    public EngineState Now => field ??= After([.. projection.Live.Where(e => e.Body is Swap or Jobs.Remedy or Occasion)]);

    private Entry? Tried(Entry remedy) => Behind(remedy).LastOrDefault(e => e.Body is Jobs.Remedy && projection.ResultOf(e.Id) is not null);

    /// <summary>The deeds among an entry's causal ancestors.</summary>
    private IEnumerable<Entry> Behind(Entry entry) => projection.Live.Where(e => e.Body is Swap or Jobs.Remedy or Occasion && projection.Precedes(e.Id, entry.Id));

    private EngineState After(IReadOnlyList<Entry> deeds)
    {
        var state = conditions.AsFound;
        var past = "";
        foreach (var deed in deeds.OrderBy(d => _order[d.Id]))
        {
            past += deed.Id;
            if (!_after.TryGetValue(past, out var next))
            {
                next = Apply(state, deed);
                _after[past] = next;
            }

            state = next;
        }

        return state;
    }

    private EngineState Apply(EngineState state, Entry deed) => deed.Body switch
    {
        Swap swap => Swapped(state, swap, deed.Id.ToString()),
        Jobs.Remedy remedy => Remedied(state, remedy, deed),
        Occasion occasion => Begun(state, occasion, deed.Id.ToString()),
        _ => state,
    };

    private EngineState Swapped(EngineState state, Swap swap, string entry)
    {
        var a = Seat(_model.Knowledge.Today(swap.Part), swap.A.Text);
        var b = Seat(_model.Knowledge.Today(swap.Part), swap.B.Text);
        if (a is not null && b is not null)
        {
            var occupant = (int[])state.Occupant.Clone();
            (occupant[a.Index], occupant[b.Index]) = (occupant[b.Index], occupant[a.Index]);
            return Handled(state with { Occupant = occupant }, entry, occupant[a.Index], occupant[b.Index]);
        }

        // Outputs of one part: the lanes that they serve are exchanged. A part without outputs has nothing to exchange.
        if (swap.A.Cylinders is [var from] && swap.B.Cylinders is [var to]
            && Array.Find(_model.Parts, p => p.Kind.Id == _model.Knowledge.Today(swap.Part) && p.Serves(from) && p.Serves(to) && Exchanges.Outputs(_model, p)) is { } shared)
        {
            var ends = new Dictionary<(int, int), int>(state.Ends);
            var (first, second) = (ends.GetValueOrDefault((shared.Index, from), from), ends.GetValueOrDefault((shared.Index, to), to));
            (ends[(shared.Index, from)], ends[(shared.Index, to)]) = (second, first);
            return Handled(state with { Ends = ends }, entry, shared.Index);
        }

        return state;
    }

    private EngineState Remedied(EngineState state, Jobs.Remedy done, Entry deed)
    {
        var entry = deed.Id.ToString();
        var version = (int[])state.Version.Clone();
        var remedy = _model.Knowledge.RemedyOf(done.Action);
        foreach (var aspect in ActedOn(state, done))
        {
            version[aspect.Index] = conditions.After(conditions.NodeOf(state, aspect), aspect, remedy!, entry);
        }

        var mended = Handled(state with { Version = version }, entry, [.. Parts(state, done)]);
        return projection.ResultOf(deed.Id) == RemedyResult.NewFault ? Damaged(mended, entry) : mended;
    }

    /// <summary>Something else went wrong meanwhile: whatever is sound may be in any of its faults, as in an engine brought in.</summary>
    private EngineState Damaged(EngineState state, string entry)
    {
        var version = (int[])state.Version.Clone();
        foreach (var aspect in _model.Aspects.Where(a => !a.Aspect.Passing && !a.Aspect.Consequence))
        {
            version[aspect.Index] = conditions.Since(conditions.NodeOf(state, aspect), aspect, entry);
        }

        return state with { Version = version };
    }

    /// <summary>The conditions that a remedy changes or may change.</summary>
    private IEnumerable<AspectInstance> ActedOn(EngineState state, Jobs.Remedy done) =>
        _model.Knowledge.RemedyOf(done.Action) is not { } remedy ? []
        : Parts(state, done).SelectMany(p => _model.AspectsOf[p])
            .Where(a => (done.Output is null || a.PartId.EndsWith("/" + done.Output, StringComparison.Ordinal)) && (remedy.Replaces || RemedyReach.Touches(remedy, a)));

    /// <summary>The parts that a remedy handles; none when it is not known today or there is no such part.</summary>
    private IEnumerable<int> Parts(EngineState state, Jobs.Remedy done) =>
        _model.Knowledge.RemedyOf(done.Action) is { } remedy && Seat(remedy.Part, done.Place.Text) is { } seat
            ? RemedyReach.Seats(_model, remedy, seat).Select(s => state.Occupant[s.Index]) : [];

    /// <summary>A new occasion: passing states are drawn afresh, for the parts handled or for all.</summary>
    private EngineState Begun(EngineState state, Occasion occasion, string entry)
    {
        var version = (int[])state.Version.Clone();
        var began = (string[])state.Occasion.Clone();
        foreach (var part in _model.Parts)
        {
            if (occasion.Handled is { } handled && !handled.Any(h => Means(h, part)))
            {
                continue;
            }

            began[part.Index] = entry;
            foreach (var aspect in _model.AspectsOf[part.Index].Where(a => a.Aspect.Passing))
            {
                version[aspect.Index] = conditions.Afresh(aspect, entry);
            }
        }

        return state with { Version = version, Occasion = began };
    }

    private static EngineState Handled(EngineState state, string entry, params ReadOnlySpan<int> parts)
    {
        var began = (string[])state.Occasion.Clone();
        foreach (var part in parts)
        {
            began[part] = entry;
        }

        return state with { Occasion = began };
    }

    private bool Means(PartId handled, PartInstance part) =>
        _model.Knowledge.Today(handled.Kind) == part.Kind.Id && (handled.Place is null || handled.Place.Value.Text == part.Place);

    private PartInstance? Seat(string kind, string place) => Array.Find(_model.Parts, p => p.Kind.Id == kind && p.Place == place);
}
