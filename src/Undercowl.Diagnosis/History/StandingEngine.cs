using Undercowl.Diagnosis.Engine;
using Undercowl.Jobs;
using Undercowl.Knowledge;

namespace Undercowl.Diagnosis.History;

/// <summary>
/// The engine as it stands: what checks have left disconnected, removed or swapped, and how warm it is. What is not undone
/// stands on the restore list.
/// </summary>
internal sealed class StandingEngine
{
    private readonly EngineModel _model;
    private readonly Dictionary<string, string> _left = [];

    /// <summary>Undone by what a later reading was taken in, though nobody said so.</summary>
    private readonly Dictionary<string, string> _implied = [];

    public StandingEngine(EngineModel model, Projection projection, EngineState now)
    {
        _model = model;
        foreach (var entry in projection.Live)
        {
            switch (entry.Body)
            {
                case Finding finding:
                    var stood = new Dictionary<string, string>(_left);
                    Take(finding.SetUp, onlyLasting: true);
                    foreach (var (name, text) in stood.Where(s => !_left.ContainsKey(s.Key)))
                    {
                        _implied[name] = text;
                    }

                    break;
                case SetUpChange change:
                    Take(change.Place is { } place && place.Text != Place.Engine.Text
                        ? change.Change.ToDictionary(p => p.Key.Contains('@', StringComparison.Ordinal) ? p.Key : $"{p.Key}@{place}", p => p.Value)
                        : change.Change, onlyLasting: false);
                    break;
                case Occasion occasion:
                    foreach (var key in HeatKeys())
                    {
                        _left[key.Id] = Word(occasion.Heat);
                    }

                    break;
                default:
                    break;
            }
        }

        Restore = [.. Disturbed(), .. Swapped(now)];
    }

    /// <summary>What is left other than at its default, lasting states only.</summary>
    public IReadOnlyDictionary<string, string> Left => _left;

    public IReadOnlyList<RestoreItem> Restore { get; }

    public static string Word(Heat heat) => heat.ToString().ToLowerInvariant();

    /// <summary>The keys whose change ends the occasion and whose values are the heat words of the log.</summary>
    public IEnumerable<SetUpKey> HeatKeys() => _model.Knowledge.SetUps.Where(k =>
        k.EndsOccasion && Enum.GetValues<Heat>().All(heat => k.Values.Any(v => v.Id == Word(heat))));

    private void Take(IReadOnlyDictionary<string, string> setUp, bool onlyLasting)
    {
        foreach (var (name, text) in setUp)
        {
            if (!onlyLasting)
            {
                _implied.Remove(name);
            }

            var at = name.IndexOf('@', StringComparison.Ordinal);
            var key = _model.SetUpKey(at < 0 ? name : name[..at]);
            var value = key?.Values.FirstOrDefault(v => v.Id == text);
            if (key is null || value is null)
            {
                continue;
            }

            if (value.Id == key.Default)
            {
                _left.Remove(name);
                if (at < 0)
                {
                    foreach (var placed in _left.Keys.Where(k => k.StartsWith(key.Id + "@", StringComparison.Ordinal)).ToArray())
                    {
                        if (!onlyLasting)
                        {
                            _left.Remove(placed);
                        }
                    }
                }
            }
            else if (value.Restore is not null || key.EndsOccasion || !onlyLasting)
            {
                _left[name] = text;
            }
        }
    }

    private IEnumerable<RestoreItem> Disturbed()
    {
        foreach (var (name, text) in _left.Concat(_implied.Where(i => !_left.ContainsKey(i.Key))).OrderBy(p => p.Key, StringComparer.Ordinal))
        {
            var at = name.IndexOf('@', StringComparison.Ordinal);
            var key = _model.SetUpKey(at < 0 ? name : name[..at])!;
            if (key.Values.First(v => v.Id == text) is { Restore: { } how } value)
            {
                var what = at < 0 ? value.Name : value.Name + Words.At(name[(at + 1)..]);
                yield return new RestoreItem(name, _left.ContainsKey(name) ? what : $"{what}, which a later reading took for undone", how);
            }
        }
    }

    private IEnumerable<RestoreItem> Swapped(EngineState now)
    {
        foreach (var seat in _model.Parts)
        {
            var other = _model.Parts[now.Occupant[seat.Index]];
            if (other.Index != seat.Index && seat.Index < Array.IndexOf(now.Occupant, seat.Index))
            {
                yield return new RestoreItem(
                    $"swap {seat.Id}", $"{Words.Part(other)} sits{Words.At(seat.Place)}", "Put it back, or keep it there and say so in a note.");
            }
        }

        foreach (var ((part, cylinder), served) in now.Ends.Where(e => e.Key.Cylinder < e.Value))
        {
            yield return new RestoreItem(
                $"swap {_model.Parts[part].Id}", $"outputs {cylinder} and {served} of the {_model.Parts[part].Kind.Name} are exchanged", "Put the leads back in their places.");
        }
    }
}

/// <summary>One thing that must be undone before sign-off.</summary>
/// <param name="Key">The set-up key, or the swap.</param>
/// <param name="What">What stands.</param>
/// <param name="How">How to undo it.</param>
public sealed record RestoreItem(string Key, string What, string How);
